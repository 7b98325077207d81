import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [sveltekit()],
  worker: { format: 'es' },
  // Component tests need Svelte's browser build; vitest would otherwise pick the server's.
  ...(process.env['VITEST'] ? { resolve: { conditions: ['browser'] } } : {}),
  test: {
    include: ['tests/{unit,published,property}/**/*.test.ts'],
    environment: 'node',
    globalSetup: 'tests/seed/say-seed.ts',
    setupFiles: 'tests/seed/use-seed.ts',
    // A busy computer fails no sound test.
    testTimeout: 300_000
  }
});
