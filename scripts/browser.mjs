import { existsSync } from 'node:fs';
import { installDebianPackages } from './debian-package.mjs';
import { findProgram, starts } from './program.mjs';
import { toolScript } from './project-folder.mjs';
import { runCommand } from './run-command.mjs';

const candidates = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  '/usr/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe'
];

/**
 * A Chromium for the end-to-end tests: the one that CHROMIUM_PATH names, else one of this computer's own, else the
 * one that the test tool has downloaded. The dependencies must be installed.
 *
 * @returns {Promise<string | null>} its path
 * @throws {Error} where CHROMIUM_PATH names something else: another browser in its place would hide the slip
 */
export async function findBrowser() {
  const wanted = process.env['CHROMIUM_PATH'];
  if (wanted) {
    if (starts(wanted)) return wanted;
    throw new Error(
      `CHROMIUM_PATH is ${JSON.stringify(wanted)}: no program that starts. Correct it, or unset it.`
    );
  }
  const own = findProgram(candidates);
  if (own) return own;
  const { chromium } = await import('@playwright/test');
  return existsSync(chromium.executablePath()) ? chromium.executablePath() : null;
}

/**
 * Finds a Chromium or installs one: Debian's package as root with apt, else the test tool's download.
 *
 * @returns {Promise<string>} its path
 * @throws {Error} where there is none to be had; its message says what to do
 */
export async function setUpBrowser() {
  const found = await findBrowser();
  if (found) return found;
  if (await installDebianPackages(['chromium', 'fonts-liberation'])) {
    const installed = await findBrowser();
    if (installed) return installed;
  }
  console.error('Downloading a Chromium for the end-to-end tests …');
  await runCommand(process.execPath, [toolScript('@playwright/test', 'playwright'), 'install', 'chromium'], {
    output: 'to-errors'
  });
  const downloaded = await findBrowser();
  if (downloaded) return downloaded;
  throw new Error(
    'No Chromium was found, and none could be installed. Install Chromium or Chrome, or let CHROMIUM_PATH name one, ' +
      'and run the tests again.'
  );
}
