import { createHash } from 'node:crypto';
import path from 'node:path';

/**
 * A small change that the mutation library makes. Places count from 0.
 *
 * @typedef {object} Mutant
 * @property {string} id
 * @property {string} fileName
 * @property {string} mutatorName
 * @property {string} replacement
 * @property {{ start: { line: number, column: number }, end: { line: number, column: number } }} location
 */

/**
 * What a mutant is, in words that stay when files move and lines shift.
 *
 * @typedef {{ file: string, mutator: string, code: string, becomes: string }} MutantInWords
 */

/** @param {Mutant} mutant @param {string} text of its file @returns {MutantInWords} */
export function inWords({ fileName, mutatorName, replacement, location: { start, end } }, text) {
  const lines = text.split('\n').slice(start.line, end.line + 1);
  lines.push((lines.pop() ?? '').slice(0, end.column));
  lines[0] = (lines[0] ?? '').slice(start.column);
  const onOneLine = (/** @type {string} */ code) => code.replace(/\s+/g, ' ').trim();
  return {
    file: path.basename(fileName),
    mutator: mutatorName,
    code: onOneLine(lines.join('\n')),
    becomes: onOneLine(replacement)
  };
}

/**
 * A sample of mutants: always the same for a seed, and little changed by a change of the code, as each is drawn by what
 * it is and not by where it stands.
 *
 * @template {Mutant} M
 * @param {readonly M[]} mutants
 * @param {ReadonlyMap<string, string>} texts of their files
 * @param {{ count: number, seed: number }} wanted
 * @returns {M[]}
 */
export function sampleOf(mutants, texts, { count, seed }) {
  /** @type {Map<string, number>} */
  const alike = new Map();
  return mutants
    .map((mutant) => {
      const words = JSON.stringify(inWords(mutant, texts.get(mutant.fileName) ?? ''));
      const nth = (alike.get(words) ?? 0) + 1;
      alike.set(words, nth);
      const lot = createHash('sha256').update(`${seed} ${nth} ${words}`).digest('hex');
      return { mutant, lot };
    })
    .sort((a, b) => (a.lot < b.lot ? -1 : 1))
    .slice(0, count)
    .map(({ mutant }) => mutant);
}

/** @param {Omit<Mutant, 'id'>} mutant @returns {string} a key that tells it from every other of the same sources */
export function keyOf({ fileName, mutatorName, replacement, location: { start, end } }) {
  return [fileName, start.line, start.column, end.line, end.column, mutatorName, replacement].join('|');
}

/**
 * Survivors of a run, put into the list of those of earlier runs: mutants that were run are listed anew, the others and
 * every reason that was given stay.
 *
 * @typedef {MutantInWords & { reason: string }} Survivor
 * @param {readonly Survivor[]} listed
 * @param {{ survived: readonly MutantInWords[], killed: readonly MutantInWords[] }} run
 * @returns {Survivor[]}
 */
export function survivorsAfter(listed, { survived, killed }) {
  const keyOfWords = (/** @type {MutantInWords} */ { file, mutator, code, becomes }) =>
    JSON.stringify([file, mutator, code, becomes]);
  const reasons = new Map(listed.map((survivor) => [keyOfWords(survivor), survivor.reason]));
  const run = new Set([...survived, ...killed].map(keyOfWords));
  const now = new Map(survived.map((words) => [keyOfWords(words), words]));
  return [
    ...listed.filter((survivor) => !run.has(keyOfWords(survivor))),
    ...[...now].map(([key, words]) => ({ ...words, reason: reasons.get(key) ?? '' }))
  ].sort((a, b) => (keyOfWords(a) < keyOfWords(b) ? -1 : 1));
}
