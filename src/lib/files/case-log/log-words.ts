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

/** Beginnings that stand for an agent among other words too, and those that say that it was not used. */
const agentAmongWords = /\b(?:sevo|desflu|isoflu|haloth|enflu)/;
const denied = /^(no|non|not|none|without|kein\w*|ohne|sans|aucun|sin|senza|geen|zonder|nil)\b/;

/** The agent that a text names; null for none, undefined where the text says neither. */
export function agentOf(text: string): Agent | null | undefined {
  const words = folded(text);
  if (noAgent.has(words)) return null;
  return startOf(words) ?? agentNamedIn(text);
}

/** The agent that is named among the words of a technique, such as “balanced (propofol, sevoflurane)”; else undefined. */
export function agentNamedIn(text: string): Agent | undefined {
  const words = folded(text);
  const at = denied.test(words) ? -1 : words.search(agentAmongWords);
  return at < 0 ? undefined : startOf(words.slice(at));
}

const startOf = (words: string): Agent | undefined =>
  agentBeginnings.find(([beginning]) => words.startsWith(beginning))?.[1];

// The first that fits counts: in “general and epidural”, “balanced with a block” the patient breathes the agent.
const techniqueWords: readonly (readonly [RegExp, Technique])[] = [
  [/\b(tiva|tci|total)\b/, 'intravenous'],
  [/\b(volatile?s?|inhal\w*|balanced|balanciert\w*|vapou?r|gas)\b/, 'volatile'],
  [/\b(intraven\w*|iv|propofol)\b/, 'intravenous'],
  [/\b(general\w*|ga|itn)\b/, 'volatile'],
  [
    /\b(spinal\w*|epidural\w*|peridural\w*|pda|spa|regional\w*|rachi\w*|caudal|plexus\w*|blocks?|neuraxial\w*|raquidea)\b/,
    'regional'
  ]
];

/** The technique that a text names, whatever agent stands beside it; undefined where it names none that is known. */
export function techniqueOf(text: string): Technique | undefined {
  const words = folded(text);
  return techniqueWords.find(([pattern]) => pattern.test(words))?.[1];
}
