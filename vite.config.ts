import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [sveltekit()],
  worker: { format: 'es' },
  // Component tests need Svelte's browser build; vitest would otherwise pick the server's.
  ...(process.env['VITEST'] ? { resolve: { conditions: ['browser'] } } : {}),
  test: {
    include: ['tests/{unit,whole,published,property}/**/*.test.ts'],
    environment: 'node',
    // A busy computer fails no sound test.
    testTimeout: 300_000
  }
});
