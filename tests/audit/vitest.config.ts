/** The audit of the spreadsheet alone, which the usual run of the tests leaves out: it takes some minutes. */
import { defineConfig } from 'vitest/config';
import base from '../../vite.config.ts';

const { projects: _, ...usual } = base.test ?? {};

export default defineConfig({
  ...base,
  test: { ...usual, include: ['tests/audit/**/*.test.ts'], testTimeout: 7_200_000 }
});
