/** The audit of the spreadsheet alone, which the usual run of the tests leaves out: it takes some minutes. */
import { defineConfig, mergeConfig } from 'vitest/config';
import usual from '../../vite.config.ts';

export default mergeConfig(
  { ...usual, test: { ...usual.test, include: [] } },
  defineConfig({ test: { include: ['tests/audit/**/*.test.ts'], testTimeout: 7_200_000 } })
);
