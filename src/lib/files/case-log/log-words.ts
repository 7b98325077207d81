/** How logs spell what the case mix knows by one name. From memory, no source. */
import type { Agent, Technique } from '#lib/calc/input.ts';

const folded = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}]+/gu, ' ')
    .trim();

const agentBeginnings: readonly (readonly [string, Agent])[] = [
  ['sev', 'sevoflurane'],
  ['des', 'desflurane'],
  ['iso', 'isoflurane'],
  ['hal', 'halothane'],
  ['enf', 'enflurane']
];

const noAgent = new Set([
  '',
  'none',
  'no',
  'kein',
  'keine',
  'keines',
  'aucun',
  'ninguno',
  'nessuno',
  'geen',
  'nil',
  'na',
  'n a',
  'tiva',
  'propofol'
]);

/** The agent that a text names; null for none, undefined where the text says neither. */
export function agentOf(text: string): Agent | null | undefined {
  const word = folded(text);
  if (noAgent.has(word)) return null;
  return agentBeginnings.find(([beginning]) => word.startsWith(beginning))?.[1];
}

const techniqueWords: readonly (readonly [RegExp, Technique])[] = [
  [/\b(tiva|tci|intraven\w*|iv|propofol|total)\b/, 'intravenous'],
  [
    /\b(spinal\w*|epidural\w*|peridural\w*|pda|spa|regional\w*|rachi\w*|caudal|plexus\w*|block|neuraxial\w*|raquidea)\b/,
    'regional'
  ],
  [/\b(volatile?s?|inhal\w*|balanced|balanciert\w*|vapou?r|general\w*|ga|itn|gas)\b/, 'volatile']
];

/** The technique that a text names; undefined where it names none that is known. */
export function techniqueOf(text: string): Technique | undefined {
  const words = folded(text);
  return techniqueWords.find(([pattern]) => pattern.test(words))?.[1];
}
