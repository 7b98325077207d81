/**
 * Units that may be typed with a number, by what they measure, and what one of each is worth in the family's first
 * unit. Prefixes and the litre, minute, hour, day, tonne: SI brochure, 9th edition (2019), tables 7 and 8. Pound:
 * international avoirdupois pound, exactly 0.45359237 kg. mmHg, cmH2O: conventional values of ISO 80000-4:2019 and
 * NIST SP 811 (2008), appendix B.8. All from memory.
 */
export interface KnownUnit {
  readonly symbol: string;
  /** Worth in the family's first unit, as numerator over denominator so that whole factors stay exact. */
  readonly over: readonly [number, number];
  /** Zero of the scale in the family's first unit; only temperatures have one. */
  readonly zero?: number;
  readonly spellings: readonly string[];
}

const families: readonly (readonly KnownUnit[])[] = [
  [
    { symbol: 'min', over: [1, 1], spellings: ['m', 'mins', 'minute', 'minutes'] },
    { symbol: 's', over: [1, 60], spellings: ['sec', 'secs', 'second', 'seconds'] },
    { symbol: 'h', over: [60, 1], spellings: ['hr', 'hrs', 'hour', 'hours'] }
  ],
  [
    { symbol: 'years', over: [1, 1], spellings: ['year', 'yr', 'yrs', 'y', 'a'] },
    { symbol: 'months', over: [1, 12], spellings: ['month', 'mo'] }
  ],
  [
    {
      symbol: 'L/min',
      over: [1, 1],
      spellings: ['lpm', 'litres/min', 'litre/min', 'liters/min', 'liter/min', 'l/minute']
    },
    { symbol: 'mL/min', over: [1, 1000], spellings: ['ml/minute'] },
    { symbol: 'L/h', over: [1, 60], spellings: ['l/hour'] },
    { symbol: 'm³/h', over: [1000, 60], spellings: ['m^3/h', 'm3/hour'] }
  ],
  [
    { symbol: 'L', over: [1, 1], spellings: ['litre', 'litres', 'liter', 'liters', 'dm3'] },
    { symbol: 'mL', over: [1, 1000], spellings: ['millilitre', 'millilitres', 'cm3', 'cc'] },
    { symbol: 'dL', over: [1, 10], spellings: [] },
    { symbol: 'm³', over: [1000, 1], spellings: ['m^3', 'cubicmetre', 'cubicmetres'] }
  ],
  [
    { symbol: 'kg', over: [1, 1], spellings: ['kilogram', 'kilograms', 'kgs'] },
    { symbol: 'g', over: [1, 1000], spellings: ['gram', 'grams'] },
    { symbol: 'mg', over: [1, 1_000_000], spellings: [] },
    { symbol: 't', over: [1000, 1], spellings: ['tonne', 'tonnes'] },
    { symbol: 'lb', over: [45_359_237, 100_000_000], spellings: ['lbs', 'pound', 'pounds'] }
  ],
  [
    { symbol: '%', over: [1, 1], spellings: ['percent', 'vol%', 'vol.%', 'vol.-%', '%vol', 'pct'] },
    { symbol: '‰', over: [1, 10], spellings: ['permille'] }
  ],
  [
    { symbol: 'kPa', over: [1, 1], spellings: [] },
    { symbol: 'Pa', over: [1, 1000], spellings: [] },
    { symbol: 'hPa', over: [1, 10], spellings: ['mbar', 'mb'] },
    { symbol: 'bar', over: [100, 1], spellings: [] },
    { symbol: 'mmHg', over: [133_322, 1_000_000], spellings: ['torr'] },
    { symbol: 'cmH2O', over: [980_665, 10_000_000], spellings: ['cmh₂o'] }
  ],
  [
    { symbol: '°C', over: [1, 1], spellings: ['c', 'degc', '℃', 'ºc', 'celsius'] },
    { symbol: '°F', over: [5, 9], zero: -160 / 9, spellings: ['f', 'degf', 'ºf', 'fahrenheit'] },
    { symbol: 'K', over: [1, 1], zero: -273.15, spellings: ['kelvin'] }
  ],
  [
    { symbol: 'W', over: [1, 1], spellings: ['watt', 'watts'] },
    { symbol: 'kW', over: [1000, 1], spellings: ['kilowatt', 'kilowatts'] }
  ],
  [
    { symbol: 'kWh', over: [1, 1], spellings: ['kw·h', 'kw*h'] },
    { symbol: 'Wh', over: [1, 1000], spellings: [] },
    { symbol: 'MWh', over: [1000, 1], spellings: [] },
    { symbol: 'MJ', over: [10, 36], spellings: [] }
  ]
];

/** One spelling for a unit, whatever the case, spaces, superscripts and closing dot with which it was typed. */
export function foldUnit(unit: string): string {
  return unit
    .toLowerCase()
    .replace(/\bper\s+/g, '/')
    .replace(/\s+/g, '')
    .replace('³', '3')
    .replace(/\.$/, '');
}

const spelt = (unit: KnownUnit, folded: string): boolean =>
  foldUnit(unit.symbol) === folded || unit.spellings.includes(folded);

/** All units into which `unit` can be converted, itself among them; empty where it is not in the table. */
export function familyOf(unit: string): readonly KnownUnit[] {
  const folded = foldUnit(unit);
  return families.find((family) => family.some((each) => spelt(each, folded))) ?? [];
}

/** The unit of `family` that is spelt so, or null. */
export function unitIn(family: readonly KnownUnit[], spelling: string): KnownUnit | null {
  const folded = foldUnit(spelling);
  return family.find((each) => spelt(each, folded)) ?? null;
}

/** `value` in `from`, expressed in `to`; to 15 significant digits, so that 0.7 h is 42 min and not 41.99999999999999. */
export function convert(
  value: number,
  { from, to }: { readonly from: KnownUnit; readonly to: KnownUnit }
): number {
  if (from === to) return value;
  const inFirst = (value * from.over[0]) / from.over[1] + (from.zero ?? 0);
  const inTarget = ((inFirst - (to.zero ?? 0)) * to.over[1]) / to.over[0];
  return Number(inTarget.toPrecision(15));
}
