import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import adapter from '@sveltejs/adapter-static';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

/** What the page's own script is allowed by: the content policy takes no other that stands in a page. */
const scriptsOfPage = [
  ...readFileSync(new URL('src/app.html', import.meta.url), 'utf8').matchAll(/<script>([^]*?)<\/script>/g)
].map(
  ([, text = '']) => /** @type {const} */ (`sha256-${createHash('sha256').update(text).digest('base64')}`)
);

/** @type {import('@sveltejs/kit').Config} */
const config = {
  preprocess: vitePreprocess(),
  kit: {
    // Every page is drawn in the browser; the host only has to hand out files.
    adapter: adapter(),
    // Relative paths, so that the same build works at the root of a host and in a sub-folder.
    paths: { relative: true },
    csp: {
      mode: 'hash',
      directives: {
        'default-src': ['self'],
        'script-src': ['self', ...scriptsOfPage],
        'worker-src': ['self'],
        'style-src': ['self'],
        // The framework announces page changes from an element with this one fixed style.
        'style-src-attr': ['unsafe-hashes', 'sha256-S8qMpvofolR8Mpjy4kQvEm7m1q8clzU4dfDH0AmvZjo='],
        'img-src': ['self', 'data:', 'blob:'],
        'font-src': ['self'],
        'connect-src': ['self'],
        'object-src': ['none'],
        'base-uri': ['self'],
        'form-action': ['none']
      }
    }
  }
};

export default config;
