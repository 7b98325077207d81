import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';
import { thirdPartyNotices } from './scripts/third-party-notices.mjs';

const notices = thirdPartyNotices();

export default defineConfig({
  plugins: [sveltekit(), notices.forApp],
  worker: { format: 'es', plugins: notices.forWorkers },
  // Component tests need Svelte's browser build; vitest would otherwise pick the server's.
  ...(process.env['VITEST'] ? { resolve: { conditions: ['browser'] } } : {}),
  test: {
    include: ['tests/{unit,whole,published,property}/**/*.test.ts'],
    environment: 'node',
    globalSetup: 'tests/seed/say-seed.ts',
    setupFiles: 'tests/seed/use-seed.ts',
    // A busy computer fails no sound test.
    testTimeout: 300_000,
    hookTimeout: 300_000
  }
});
