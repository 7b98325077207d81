import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { fingerprint } from '../../../scripts/fingerprint.mjs';
import { areDependenciesInstalled } from '../../../scripts/set-up.mjs';
import { isSupportedNode } from '../../../scripts/supported-node.mjs';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'set-up-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

function write(file: string, content: unknown): void {
  const place = path.join(folder, file);
  mkdirSync(path.dirname(place), { recursive: true });
  writeFileSync(place, typeof content === 'string' ? content : JSON.stringify(content));
}

describe('the version of Node', () => {
  test.each(['20.19.0', '20.20.2', '22.13.0', '22.21.1', '24.0.0', '25.1.0', '100.0.0'])(
    '%s will do',
    (version) => {
      expect(isSupportedNode(version)).toBe(true);
    }
  );
  test.each(['16.20.2', '18.20.8', '20.18.3', '21.7.3', '22.12.0', '23.11.1'])('%s will not', (version) => {
    expect(isSupportedNode(version)).toBe(false);
  });
});

describe('the dependencies', () => {
  const lock = {
    packages: {
      '': { name: 'app', version: '1.0.0' },
      'node_modules/a': { version: '1.0.0', integrity: 'sha512-a' },
      'node_modules/b': { version: '2.0.0', integrity: 'sha512-b' },
      'node_modules/other-system': { version: '1.0.0', integrity: 'sha512-o', optional: true }
    }
  };
  const { 'node_modules/a': a, 'node_modules/b': b } = lock.packages;

  test.each([
    ['nothing is there', null, false],
    ['all is there', { a, b }, true],
    ['one is missing', { a }, false],
    ['one is of another version', { a, b: { ...b, version: '2.0.1' } }, false],
    ['one has other contents', { a, b: { ...b, integrity: 'sha512-x' } }, false]
  ])('%s', (_case, installed, isInstalled) => {
    write('package-lock.json', lock);
    if (installed) {
      const packages = Object.fromEntries(
        Object.entries(installed).map(([name, entry]) => [`node_modules/${name}`, entry])
      );
      write('node_modules/.package-lock.json', { packages });
    }
    expect(areDependenciesInstalled(folder)).toBe(isInstalled);
  });
});

describe('the fingerprint of files', () => {
  test('is the same for the same files, and another after every kind of change', () => {
    const places = ['src', 'config.js', 'missing'];
    write('src/a.ts', 'a');
    write('src/deep/b.ts', 'b');
    write('config.js', 'c');
    write('elsewhere.ts', 'x');
    const seen = [fingerprint(places, folder)];
    write('elsewhere.ts', 'y');
    write('src/a.ts', 'a');
    expect(fingerprint(places, folder)).toBe(seen[0]);

    const changes: (() => void)[] = [
      () => write('src/a.ts', 'A'),
      () => write('src/deep/c.ts', ''),
      () => rmSync(path.join(folder, 'src/deep/b.ts')),
      () => write('missing', ''),
      // The same bytes under another division into files.
      () => write('src/deep/c.ts', 'c'),
      () => write('config.js', '')
    ];
    for (const change of changes) {
      change();
      seen.push(fingerprint(places, folder));
    }
    expect(new Set(seen).size).toBe(1 + changes.length);
  });
});
