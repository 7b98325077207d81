import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';
import { coreFolders } from './tests/core-folders.ts';
import { thirdPartyNotices } from './scripts/third-party-notices.mjs';

const allTests = ['tests/{unit,whole,published,property}/**/*.test.ts'];
const coreTests = coreFolders.map((folder) => `tests/${folder}/**/*.test.ts`);

const notices = thirdPartyNotices();

export default defineConfig({
  plugins: [sveltekit(), notices.forApp],
  worker: { format: 'es', plugins: notices.forWorkers },
  // Component tests need Svelte's browser build; vitest would otherwise pick the server's.
  ...(process.env['VITEST'] ? { resolve: { conditions: ['browser'] } } : {}),
  test: {
    environment: 'node',
    globalSetup: 'tests/seed/say-seed.ts',
    setupFiles: 'tests/seed/use-seed.ts',
    maxWorkers: '100%',
    // A busy computer fails no sound test.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    projects: [
      { extends: true, test: { name: 'core', include: coreTests, isolate: false } },
      { extends: true, test: { name: 'around', include: allTests, exclude: coreTests } }
    ]
  }
});
