import { test as base } from '@playwright/test';

export { expect } from '@playwright/test';

/**
 * Playwright's test, whose page must stay sound: an error on the page, a breach of its content policy, or a request to
 * another host fails the test, whatever else it checks.
 */
export const test = base.extend({
  page: async ({ page, baseURL }, use) => {
    const problems: string[] = [];
    page.on('pageerror', (error) => problems.push(`error on the page: ${error.stack ?? error.message}`));
    page.on('console', (message) => {
      if (message.type() === 'error') problems.push(`error in the console: ${message.text()}`);
    });
    page.on('request', (request) => {
      const isOwn = /^(data|blob):/.test(request.url()) || request.url().startsWith(baseURL ?? '');
      if (!isOwn) problems.push(`request to another host: ${request.url()}`);
    });
    await use(page);
    base.expect(problems, 'the page stays without errors and asks no other host').toEqual([]);
  }
});
