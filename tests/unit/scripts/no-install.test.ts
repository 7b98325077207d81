import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { missingTools } from '../../../scripts/missing-tools.mjs';

const project = fileURLToPath(new URL('../../../', import.meta.url));

const computer = ({ office = false, postgres = false, browser = false, canInstall = true }) => ({
  findOffice: () => (office ? '/usr/bin/soffice' : null),
  findPostgres: () => (postgres ? '/usr/bin/initdb' : null),
  findBrowser: async () => (browser ? '/usr/bin/chromium' : null),
  canInstallOffice: () => canInstall,
  canInstallPostgres: () => canInstall
});
const all = { office: true, postgres: true, browser: true };

describe('what a run of the tests would install', () => {
  test.each([
    ['nothing, where all is there', all, { office: true, postgres: true, browser: true }, []],
    ['all of them, where none is there', all, {}, ['LibreOffice', 'PostgreSQL', 'a Chromium']],
    ['a browser alone, where the others cannot be installed', all, { canInstall: false }, ['a Chromium']],
    [
      'nothing that the chosen stages do not need',
      { office: false, postgres: false, browser: false },
      {},
      []
    ],
    [
      'no browser, where none is needed',
      { office: true, postgres: false, browser: false },
      {},
      ['LibreOffice']
    ]
  ])('is %s', async (_, needed, there, names) => {
    const missing = await missingTools(needed, computer(there));
    expect(missing.map((text) => text.replace(/ \(.*/, ''))).toEqual(names);
  });
});

test('npm test -- --no-install stops before anything is installed, and says what to do', () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'no-install-'));
  try {
    for (const part of ['scripts', 'package.json', 'package-lock.json'])
      cpSync(path.join(project, part), path.join(folder, part), { recursive: true });
    const { status, stderr, stdout } = spawnSync(
      process.execPath,
      [path.join(folder, 'scripts/test.mjs'), '--no-install'],
      { encoding: 'utf8' }
    );
    expect(stderr).toBe(
      'The dependencies of the lock file are not all installed, and --no-install was given. Run npm ci, or the ' +
        'command without --no-install.\n'
    );
    expect([status, stdout]).toEqual([1, '']);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
