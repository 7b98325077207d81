import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const core = fileURLToPath(new URL('../../../../src/lib/calc/', import.meta.url));

/** The core's sources by their path inside it, the reference records left out. */
export const coreSources: ReadonlyMap<string, string> = new Map(
  readdirSync(core, { recursive: true, encoding: 'utf8' })
    .map((file) => file.split(path.sep).join('/'))
    .filter((file) => file.endsWith('.ts') && !file.startsWith('reference/'))
    .map((file) => [file, readFileSync(path.join(core, file), 'utf8')])
);
