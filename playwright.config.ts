import { defineConfig } from '@playwright/test';
import { findBrowser } from './scripts/browser.mjs';

// Kept in the environment, so that the test workers, which read this file again, need not search again.
const browser = await findBrowser();
if (browser) process.env['CHROMIUM_PATH'] = browser;

export default defineConfig({
  testDir: 'tests/e2e',
  outputDir: 'test-results',
  forbidOnly: true,
  // A test that passes only sometimes is a defect to be seen.
  retries: 0,
  fullyParallel: true,
  workers: 2,
  // Generous, for a busy computer: what a page is to do, it does or not; how fast is for the benches.
  timeout: 120_000,
  expect: { timeout: 20_000 },
  reporter: 'list',
  webServer: {
    // Builds first where the sources have changed, and takes any free port, so that runs do not get in each other's way.
    command: 'node scripts/start.mjs --port 0',
    wait: { stdout: /(?<vapour_ledger_address>http:\/\/\S+\/) / },
    timeout: 120_000,
    gracefulShutdown: { signal: 'SIGTERM', timeout: 2000 }
  },
  use: {
    // The address is known once the server has said it; the workers read this file after that.
    baseURL: process.env['VAPOUR_LEDGER_ADDRESS'] ?? '',
    // The tests of the installed app allow it; elsewhere it would answer from its store what a test wants to see afresh.
    serviceWorkers: 'block',
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    trace: 'off',
    screenshot: 'only-on-failure',
    launchOptions: {
      // Without one, the test tool says how to get its own.
      ...(browser ? { executablePath: browser } : {}),
      args: [
        // Containers and the root user allow no sandbox of Chromium's own.
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        // The rest keeps the browser from asking the network for things of its own.
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync'
      ]
    }
  }
});
