/** The tests that mutants of the core and of the document are tried on: those of other rooms only take longer. */
import { defineConfig } from 'vitest/config';
import base from '../../vite.config.ts';

export default defineConfig({
  ...base,
  test: {
    ...base.test,
    include: ['tests/{whole,published,property}/**/*.test.ts', 'tests/unit/{calc,workbook}/**/*.test.ts'],
    exclude: ['tests/property/files-*.test.ts']
  }
});
