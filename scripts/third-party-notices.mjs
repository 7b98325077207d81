/**
 * The licences of what is built into the app, as one file of the build. The list is that of the bundler itself: each
 * module and asset that it put into the app, its workers included, so nothing can be forgotten. Where a package ships no
 * licence text, the build fails.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { projectFolder } from './project-folder.mjs';

export const noticesFile = 'THIRD-PARTY-NOTICES.txt';

/**
 * Code that a build tool writes into every bundle carries no path of its own.
 *
 * @type {readonly (readonly [string, string])[]}
 */
const writtenByTools = [
  ['\0vite/', 'vite'],
  ['\0rolldown/', 'rolldown']
];

/**
 * The folder of the package that a module is from; null for the project's own modules.
 *
 * @param {string} id the module's, as the bundler names it
 */
export function packageFolderOf(id) {
  for (const [prefix, name] of writtenByTools)
    if (id.startsWith(prefix)) return path.join(projectFolder, 'node_modules', name);
  const place = id
    .replace(/^\0/, '')
    .replace(/[?#].*$/, '')
    .replaceAll('\\', '/');
  const found = /^(.*(?:^|\/)node_modules\/(?:@[^/]+\/)?[^/]+)/.exec(place)?.[1];
  return found === undefined ? null : path.resolve(projectFolder, found);
}

/**
 * A package's name, version, licence and the text of the licence.
 *
 * @param {string} folder
 * @throws {Error} where it ships no text: then somebody has to look
 */
export function noticeOf(folder) {
  const { name, version, license } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'));
  const file = readdirSync(folder).find((each) => /^licen[cs]e(\.(md|txt))?$/i.test(each));
  if (file === undefined || typeof license !== 'string')
    throw new Error(`${name} ${version} is built into the app and ships no licence text: ${folder}`);
  const whole = readFileSync(path.join(folder, file), 'utf8').replaceAll('\r\n', '\n');
  // A build tool lists what is bundled into itself, too; none of that comes into the app.
  const text = whole.split(/^# Licenses of bundled dependencies/m)[0]?.trim() ?? '';
  return { name, version, license, text };
}

/**
 * The file: the app's own licence, then a part for each package, by name.
 *
 * @param {Iterable<string>} folders of the packages
 */
export function noticesText(folders) {
  const rule = '='.repeat(80);
  const own = readFileSync(path.join(projectFolder, 'LICENSE'), 'utf8').trim();
  const notices = [...new Set(folders)].map(noticeOf).sort((a, b) => (a.name < b.name ? -1 : 1));
  return [
    `Vapour Ledger\n\n${own}`,
    'What others made and is built into the app, each under its own licence:\n\n' +
      notices.map(({ name, version, license }) => `  ${name} ${version} (${license})`).join('\n'),
    ...notices.map(({ name, version, license, text }) => `${name} ${version} (${license})\n\n${text}`)
  ]
    .join(`\n\n${rule}\n\n`)
    .concat('\n');
}

/**
 * Two plugins that share what they saw: `forWorkers` notes what goes into the workers, `forApp` notes the rest and writes
 * the file.
 *
 * @returns {{ forApp: import('vite').Plugin, forWorkers: () => import('vite').Plugin[] }}
 */
export function thirdPartyNotices() {
  /** @type {Set<string>} */
  const folders = new Set();
  /** @param {import('vite').Rolldown.OutputBundle} bundle */
  const note = (bundle) => {
    for (const part of Object.values(bundle)) {
      const places =
        part.type === 'asset'
          ? part.originalFileNames
          : Object.entries(part.modules).flatMap(([id, { renderedLength }]) =>
              renderedLength > 0 ? [id] : []
            );
      for (const place of places) {
        const folder = packageFolderOf(place);
        if (folder !== null && existsSync(path.join(folder, 'package.json'))) folders.add(folder);
      }
    }
  };
  return {
    forWorkers: () => [
      { name: 'third-party-notices-of-workers', generateBundle: (_, bundle) => note(bundle) }
    ],
    forApp: {
      name: 'third-party-notices',
      generateBundle(_, bundle) {
        if (this.environment.name !== 'client') return;
        note(bundle);
        this.emitFile({ type: 'asset', fileName: noticesFile, source: noticesText(folders) });
      }
    }
  };
}
