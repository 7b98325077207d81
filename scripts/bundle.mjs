import { existsSync, readdirSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';
import { fingerprint } from './fingerprint.mjs';
import { projectFolder } from './project-folder.mjs';

const cacheFolder = path.join(projectFolder, '.cache');

/**
 * Bundles a TypeScript file and all that it imports into plain JavaScript, once for each state of the sources. What
 * runs is then the code itself: no loader stands between the modules, at start-up or in a measurement.
 *
 * @param {object} wanted
 * @param {string} wanted.entry the TypeScript file, relative to the project
 * @param {readonly string[]} wanted.sources files and folders that it is made from, relative to the project
 * @param {boolean} wanted.withPackages whether third-party packages go into the bundle, which makes it start faster;
 *   otherwise they are loaded from where they are installed
 * @returns {Promise<string>} path of the JavaScript
 */
export async function bundle({ entry, sources, withPackages }) {
  const name = path.basename(entry, '.ts');
  const state = fingerprint([...sources, 'package-lock.json', 'scripts/bundle.mjs']);
  const folder = path.join(cacheFolder, `${name}-${state}`);
  const script = path.join(folder, `${name}.mjs`);
  if (existsSync(script)) return script;

  const { build } = await import('vite');
  // Built aside and moved there in one step, so that another run at the same time never meets a half of it.
  const draft = path.join(cacheFolder, `draft-${process.pid}-${name}`);
  await build({
    root: projectFolder,
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    mode: 'production',
    // The bundler reads TypeScript by itself; the project's settings build on a file that a fresh clone has not yet.
    oxc: false,
    ssr: withPackages ? { noExternal: true } : {},
    build: {
      ssr: path.join(projectFolder, entry),
      outDir: draft,
      target: 'node20',
      minify: false,
      rolldownOptions: {
        tsconfig: false,
        output: { entryFileNames: `${name}.mjs`, chunkFileNames: '[name]-[hash].mjs' }
      }
    }
  });
  const ofAnotherState = readdirSync(cacheFolder).filter(
    (other) => new RegExp(`^${name}-[0-9a-f]{16}$`).test(other) && other !== `${name}-${state}`
  );
  for (const old of ofAnotherState) rmSync(path.join(cacheFolder, old), { recursive: true, force: true });
  try {
    renameSync(draft, folder);
  } catch (error) {
    rmSync(draft, { recursive: true, force: true });
    if (!existsSync(script)) throw error;
  }
  return script;
}
