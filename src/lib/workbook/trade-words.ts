/** How the trade calls what the case mix knows by one name, in cells, files and logs. From memory, no source. */
import type { Agent, Airway, Pneumoperitoneum, Technique } from '#lib/calc/input.ts';
import type { Field } from './field.ts';
import {
  agentOptions,
  airwayOptions,
  caseFields,
  pneumoperitoneumOptions,
  techniqueOptions
} from './fields.ts';

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
    /\b(spinal\w*|epidural\w*|peridural\w*|pda|spa|regional\w*|rachi\w*|caudal|plexus\w*|blocks?|local\w*|neuraxial\w*|raquidea)\b/,
    'regional'
  ],
  [/\bsedat\w*/, 'intravenous']
];

/** The technique that a text names, whatever agent stands beside it; undefined where it names none that is known. */
export function techniqueOf(text: string): Technique | undefined {
  const words = folded(text);
  return techniqueWords.find(([pattern]) => pattern.test(words))?.[1];
}

const airwayWords: readonly (readonly [RegExp, Airway])[] = [
  [/\b(lma|sga|sgad|lm|larynx\w*|laryngeal|supraglott\w*)\b/, 'supraglottic'],
  [
    /\b(ett?|oett|nett|dlt|endotrach\w*|trach\w*|intubat\w*|tubus|tube|oral tube|nasal tube)\b/,
    'tracheal-tube'
  ],
  [/\b(face ?mask|facemask|mask|maske)\b/, 'mask'],
  [/\b(none|no|natural|spontaneous|own|nasal)\b/, 'none']
];

const pneumoperitoneumWords: readonly (readonly [RegExp, Pneumoperitoneum])[] = [
  [/\b(no|none|open)\b/, 'none'],
  [/\b(extraperit\w*|retroperit\w*|tep)\b/, 'extraperitoneal'],
  [/\b(gyn\w*)\b/, 'gynaecological'],
  [/\b(lap|laparosc\w*|yes|intraperit\w*)\b/, 'intraperitoneal']
];

const firstOf = <T>(words: readonly (readonly [RegExp, T])[], text: string): T | undefined =>
  words.find(([pattern]) => pattern.test(folded(text)))?.[1];

/** The id of the option that a text means by a word of the trade; null for none of them, undefined where it names none. */
export function choiceMeant(field: Field, text: string): string | null | undefined {
  if (field.kind !== 'choice') return undefined;
  switch (field.options) {
    case agentOptions:
      return field.optional === true && noAgent.has(folded(text)) ? null : agentNamedIn(text);
    case techniqueOptions:
      return techniqueOf(text);
    case airwayOptions:
      return firstOf(airwayWords, text);
    case pneumoperitoneumOptions:
      return firstOf(pneumoperitoneumWords, text);
    default:
      return undefined;
  }
}

/**
 * A number as the trade writes it, as the cell takes it: `FiO2 0.4` and `0.4` in the column of inspired oxygen are 40 %,
 * `90 %` in that of the target is 0.9 MAC. A fraction of oxygen cannot be taken for a percentage: no mixture for a
 * patient has less than 21 %. The text itself where it is no such case.
 * @param read reads a bare number by the locale; null where the text is none
 */
export function numberMeant(
  field: Field,
  text: string,
  read: (text: string) => number | null
): string | number {
  if (field === caseFields.inspiredOxygenPercent) {
    const bare = text.replace(/^(?:fi?\s?o[2₂]|o[2₂])\s*[=:]?\s*/i, '');
    const value = read(bare);
    if (value !== null && value >= 0.21 && value <= 1) return Number((value * 100).toPrecision(12));
    return bare;
  }
  if (field === caseFields.targetMac) {
    const percent = /^(.*\d)\s*%$/.exec(text)?.[1];
    const value = percent === undefined ? null : read(percent);
    if (value !== null) return Number((value / 100).toPrecision(12));
  }
  return text;
}
