import { readdirSync } from 'node:fs';
import path from 'node:path';
import { installDebianPackages } from './debian-package.mjs';
import { findProgram, starts } from './program.mjs';

/** Debian keeps the server's programs off the path, a folder for each version. */
const debianFolder = '/usr/lib/postgresql';

function candidates() {
  /** @type {string[]} */
  let versions = [];
  try {
    versions = readdirSync(debianFolder).sort((a, b) => Number(b) - Number(a));
  } catch {
    // Not a Debian with PostgreSQL.
  }
  return [...versions.map((version) => path.join(debianFolder, version, 'bin', 'initdb')), 'initdb'];
}

/**
 * PostgreSQL, on which a test groups a case log: the folder of programs that POSTGRES_BIN names (empty: there is none),
 * else one that is there.
 *
 * @returns {string | null} the program that makes a new database cluster; the others lie beside it
 */
export function findPostgres() {
  const wanted = process.env['POSTGRES_BIN'];
  if (wanted === undefined) return findProgram(candidates());
  const initdb = path.join(wanted, 'initdb');
  return wanted !== '' && starts(initdb) ? initdb : null;
}

/**
 * Finds PostgreSQL or, where POSTGRES_BIN says nothing, installs Debian's package as root with apt.
 *
 * @returns {Promise<string | null>} as `findPostgres`
 */
export async function setUpPostgres() {
  const found = findPostgres();
  if (found || process.env['POSTGRES_BIN'] !== undefined) return found;
  return (await installDebianPackages(['postgresql'])) ? findProgram(candidates()) : null;
}
