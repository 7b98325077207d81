/**
 * A change of the sources made by hand, to see whether a test notices.
 *
 * @typedef {object} Change
 * @property {string} rule the rule that it breaks, a sentence
 * @property {readonly (readonly [find: string, put: string])[]} edits texts that stand once in the sources, wherever
 *   that is, and what is put in their place
 */

/**
 * Makes a change in memory. A text is found whatever lies around it and however it is broken into lines, so that a
 * change outlives moves and formatting.
 *
 * @param {ReadonlyMap<string, string>} sources text by file
 * @param {Change} change
 * @returns {{ changed: ReadonlyMap<string, string> } | { problem: string }} the new texts of the changed files, or why
 *   the change does not apply
 */
export function applyChange(sources, { edits }) {
  const changed = new Map();
  for (const [find, put] of edits) {
    const pattern = new RegExp(patternOf(find), 'g');
    const found = [...sources].flatMap(([file, text]) =>
      [...(changed.get(file) ?? text).matchAll(pattern)].map((match) => ({ file, match }))
    );
    const [only] = found;
    if (only === undefined) return { problem: `“${find}” stands nowhere any more` };
    if (found.length > 1) {
      const files = new Set(found.map(({ file }) => file));
      return { problem: `“${find}” stands ${found.length} times, in ${[...files].join(', ')}` };
    }
    const text = changed.get(only.file) ?? sources.get(only.file);
    const { index } = only.match;
    changed.set(only.file, text.slice(0, index) + put + text.slice(index + only.match[0].length));
  }
  return { changed };
}

/**
 * A pattern of a text in which lines may be broken elsewhere: at spaces, and inside brackets.
 *
 * @param {string} text
 */
function patternOf(text) {
  return text
    .trim()
    .split(/\s+/)
    .map((word) =>
      word
        .replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&')
        .replace(/\\[([{](?=.)/g, '$&\\s*')
        .replace(/(?<=.)\\[)\]}]/g, '\\s*$&')
    )
    .join('\\s+')
    .replaceAll(/(\\[([{])\\s\+/g, '$1\\s*')
    .replaceAll(/\\s\+(\\[)\]}])/g, '\\s*$1');
}
