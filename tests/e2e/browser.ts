import { test as base } from '@playwright/test';

export { expect } from '@playwright/test';

/**
 * Playwright's test, whose page must stay sound: an error on the page, a breach of its content policy, or a request to
 * another computer fails the test, whatever else it checks.
 */
export const test = base.extend({
  page: async ({ page }, use) => {
    const problems: string[] = [];
    page.on('pageerror', (error) => problems.push(`error on the page: ${error.stack ?? error.message}`));
    page.on('console', (message) => {
      if (message.type() !== 'error') return;
      problems.push(`error in the console: ${message.text()} (${message.location().url})`);
    });
    page.on('request', (request) => {
      const { protocol, hostname } = new URL(request.url());
      const isOwn = protocol === 'data:' || protocol === 'blob:' || hostname === '127.0.0.1';
      if (!isOwn) problems.push(`request to another computer: ${request.url()}`);
    });
    await use(page);
    base.expect(problems, 'the page stays without errors and asks no other computer').toEqual([]);
  }
});
