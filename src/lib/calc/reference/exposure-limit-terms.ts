/**
 * On what terms a workplace limit for theatre air is set: where, over which time it is averaged, and at which temperature
 * it is stated as mass. Dated data; which limit is in force is for local law and occupational health to say.
 */
import type { Constant, Source } from './constant.ts';
import { constant } from './constant.ts';
import type { ReferenceSet } from './reference-set.ts';
import { take } from './reference-set.ts';
import { hseEh40, niosh1977 } from './sources.ts';
import { statements } from './statements.ts';

/** Where limits were looked for; a limit stands under one of them. */
export const airLimitPlaces = [
  'united-kingdom',
  'germany',
  'france',
  'netherlands',
  'sweden',
  'united-states',
  'ontario'
] as const;
export type AirLimitPlace = (typeof airLimitPlaces)[number];

/** When the records were gathered; limits change, and the text in force decides. */
export const airLimitsAsOf = '2026-11';

/**
 * `working-day`: a mean over eight hours, held against the mean of the hours of anaesthesia. `while-given`: over an hour or
 * over the administration, held against the highest case group.
 */
export type AirAveraging = 'working-day' | 'while-given';

export interface AirLimit {
  readonly place: AirLimitPlace;
  readonly limit: Constant;
  readonly averaging: AirAveraging;
  /** How the averaging time is known. */
  readonly averagingEvidence: 'read' | 'memory';
  readonly referenceTemperature: Constant;
}

const temperature = (
  place: AirLimitPlace,
  value: number,
  known: { readonly conditions: string; readonly source: Source; readonly evidence: Constant['evidence'] }
): Constant =>
  constant({
    id: `exposure-limit-temperature.${place}`,
    name: `Temperature at which limits as mass are stated, ${place.replaceAll('-', ' ')}`,
    value,
    printed: String(value),
    unit: '°C',
    kind: 'reference-temperature',
    ...known
  });
const recalled = (title: string): { conditions: string; source: Source; evidence: 'memory' } => ({
  conditions: 'at 101.325 kPa; recalled, check before use',
  source: { title, locator: 'conversion of ppm to mg/m3' },
  evidence: 'memory'
});

const temperatures: Readonly<Record<AirLimitPlace, Constant>> = {
  'united-kingdom': temperature('united-kingdom', 20, {
    conditions: '50 ppm of isoflurane stands there as 383 mg/m3, which is so at 20 °C and 101.325 kPa',
    source: hseEh40,
    evidence: 'read'
  }),
  germany: temperature('germany', 20, recalled('TRGS 900, workplace limit values, Germany')),
  france: temperature('france', 20, recalled('Practice of French workplace limits')),
  netherlands: temperature('netherlands', 20, {
    conditions: '20 ppm of isoflurane stands there as 153 mg/m3, which is so at 20 °C and 101.325 kPa',
    source: {
      authors: 'Dutch Health Council',
      title: 'Advice on occupational exposure limits for inhaled anaesthetics',
      locator: 'health-based limits'
    },
    evidence: 'read'
  }),
  sweden: temperature('sweden', 20, recalled('AFS, workplace limit values, Sweden')),
  'united-states': temperature('united-states', 25, {
    ...recalled('NIOSH 77-140'),
    source: { ...niosh1977, locator: 'conversion of ppm to mg/m3' }
  }),
  ontario: temperature('ontario', 25, recalled('Ontario Regulation 833'))
};

/** Records of their own: a published set is closed. */
export const airLimitTemperatures: readonly Constant[] = airLimitPlaces.map((place) => temperatures[place]);

/** The advice of the Netherlands was read without its averaging time; eight hours is recalled. */
const recalledAveraging: readonly AirLimitPlace[] = ['netherlands'];

const isWhileGiven = (conditions: string): boolean =>
  /ceiling|over the administration|maintenance phase/.test(conditions);

/** Peaks that stand beside a limit, in ppm over a quarter of an hour. Nothing here estimates such a peak. */
export const shortTermInWords: Readonly<Partial<Record<AirLimitPlace, string>>> = {
  sweden: 'Sweden also sets 20 ppm over a short time (from memory).',
  germany: 'Germany also bounds peaks of nitrous oxide, at twice the limit.'
};

/** Whether a limit is one for this substance: its own, or one for all halogenated agents. */
const isFor = (limitSubject: string, subject: string): boolean =>
  limitSubject === subject ||
  (subject === 'nitrous-oxide'
    ? limitSubject === 'nitrous-oxide-over-8-h'
    : limitSubject === 'halogenated-agents');

/** The limits on record for a substance, in the order of the places; of one place, if it is named. */
export function airLimits(set: ReferenceSet, subject: string, place?: AirLimitPlace): readonly AirLimit[] {
  return airLimitPlaces
    .filter((each) => place === undefined || each === place)
    .flatMap((each) =>
      [...set.constants.values()]
        .filter(({ id }) => id.startsWith(`exposure-limit.${each}.`))
        .filter(({ id }) => isFor(id.slice(`exposure-limit.${each}.`.length), subject))
        .map(({ id, conditions }): AirLimit => ({
          place: each,
          limit: take(set, id),
          averaging: isWhileGiven(conditions) ? 'while-given' : 'working-day',
          averagingEvidence: recalledAveraging.includes(each) ? 'memory' : 'read',
          referenceTemperature: temperatures[each]
        }))
    );
}

export const airLimitPlaceTitles: Readonly<Record<AirLimitPlace, string>> = {
  'united-kingdom': 'United Kingdom',
  germany: 'Germany',
  france: 'France',
  netherlands: 'Netherlands',
  sweden: 'Sweden',
  'united-states': 'United States',
  ontario: 'Ontario, Canada'
};

/** What is said where a place has no limit on record for a substance: never an all-clear. */
export function noAirLimit(place: AirLimitPlace, subject: string): string {
  const known = statements.find(({ id }) => id === `missing.exposure-limit.${place}`)?.statement;
  return known !== undefined && known.includes(subject)
    ? known
    : `No limit for ${subject.replaceAll('-', ' ')} is on record here for ${airLimitPlaceTitles[place]}. That none is on record is no all-clear: exposure is to be kept as low as can be, and local law and occupational health decide.`;
}
