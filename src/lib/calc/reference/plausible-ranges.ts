/**
 * What each kind of constant can plausibly be: wide enough for every published value, narrow enough to catch a slip
 * of the hand (a decimal place, a unit). The bounds are this project's judgement, from memory unless the sentence
 * says otherwise; they decide no result.
 */
import type { Override, ReferenceSet } from './reference-set.ts';

export interface PlausibleRange {
  readonly low: number;
  readonly high: number;
  /** Why no value outside is believed, as one sentence. */
  readonly because: string;
}

const range = (low: number, high: number, because: string): PlausibleRange => ({ low, high, because });

/** By `kind` of constant. A test holds that every kind in use stands here, and that every value lies inside. */
export const plausibleRanges: Readonly<Record<string, PlausibleRange>> = {
  'gas-constant': range(8.31446, 8.31447, 'It is exact since the units were redefined in 2019.'),
  pressure: range(101.325, 101.325, 'It is exact by definition.'),
  temperature: range(273.15, 273.15, 'It is exact by definition.'),
  'molar-mass': range(
    18,
    250,
    'The lightest substance here is heavier than water, and halogenated ethers in use stay below 250 g/mol.'
  ),
  'liquid-density': range(
    1.3,
    2,
    'Halogenated anaesthetics are heavier than water; the densest, halothane, stays below 2 g/mL.'
  ),
  'vapour-per-liquid': range(
    150,
    260,
    'Density over molar mass of these agents, times the molar volume at theatre temperature, lies between.'
  ),
  'blood-gas': range(
    0.3,
    3,
    'From desflurane and nitrous oxide near 0.45 to halothane near 2.5, with the spread between laboratories.'
  ),
  'lean-tissue-blood': range(0.9, 5, 'Lean tissue dissolves as much as blood or a few times more.'),
  'fat-blood': range(
    2,
    80,
    'From nitrous oxide, which fat hardly prefers, to halothane with some fifty times the solubility in blood.'
  ),
  'mac40.volatile': range(
    0.5,
    10,
    'From halothane at 0.75 % to desflurane at 6 to 7 %, with the spread between studies.'
  ),
  'mac40.nitrous-oxide': range(90, 120, 'One MAC of nitrous oxide needs about one atmosphere of it.'),
  'mac-age-slope': range(
    -0.006,
    -0.0015,
    'MAC falls with age by 4 to 11 % per decade in every published set.'
  ),
  'metabolised-share': range(0, 60, 'No agent in use is metabolised by much more than half.'),
  'vaporiser-maximum': range(
    3,
    20,
    'Scales end between a few times MAC and the 18 % of desflurane vaporisers.'
  ),
  'body-weight': range(50, 100, 'A standard adult of the published body models weighs about 70 kg.'),
  'size-exponent': range(
    0.6,
    1,
    'Metabolic rate grows with a power of weight between that of body surface, 2/3, and weight itself, 1.'
  ),
  'cardiac-output-coefficient': range(
    0.1,
    0.35,
    'It gives 2.4 to 8.5 L/min at 70 kg: from deep anaesthesia to the awake adult.'
  ),
  'metabolic-coefficient': range(5, 15, 'It gives 120 to 360 mL/min at 70 kg, at rest or anaesthetised.'),
  'oxygen-consumption-change': range(-150, 0, 'Anaesthesia lowers oxygen consumption, by less than half.'),
  'child-weight': range(10, 40, 'The lines for small children end before adult size.'),
  'adult-weight': range(45, 90, 'Adult size is reached between.'),
  age: range(1, 110, 'A person’s.'),
  'body-surface': range(1.5, 2.5, 'A standard adult has nearly 2 m2.'),
  'body-height': range(1.4, 2, 'Mean heights of adults lie between.'),
  'body-mass-index': range(25, 40, 'Obesity begins at 30; some countries draw the line lower.'),
  'gas-exchange-per-surface': range(60, 200, 'From a deep anaesthetic to the awake adult.'),
  'lean-weight-coefficient': range(50, 20000, 'A factor of a few about the published coefficients.'),
  'lung-share': range(40, 100, 'The lung gets smaller in obesity, by less than half for 10 kg/m2.'),
  'child-lung-volume': range(10, 45, 'From an infant to the awake adult’s volume per kg.'),
  'spill-share': range(0, 100, 'A share.'),
  'drawn-in-share': range(0, 100, 'A share.'),
  'course-minutes': range(0, 60, 'Insufflated CO2 is taken up within minutes.'),
  'child-slope': range(2, 10, 'A small child uses a few mL/min per kg.'),
  'child-intercept': range(0, 40, 'The constant part stays below what a newborn uses in all.'),
  'organ-volume': range(0.0001, 0.5, 'No organ is more than half of the body.'),
  'organ-flow': range(1, 300, 'No organ gets more than the cardiac output, some 230 mL/min/kg^0.75.'),
  'compartment-volume': range(2, 45, 'No group of tissues is more than about 45 L of an adult of 70 kg.'),
  'compartment-share': range(1, 85, 'The vessel-rich group gets most of the cardiac output, but not all.'),
  'fat-perfusion': range(0.005, 0.15, 'Fat gets from a few to some hundred mL/min per kg.'),
  'lung-volume': range(0.2, 5, 'The gas and tissue of an adult lung at the end of a breath.'),
  'lung-volume-change': range(100, 1000, 'Induction takes some tenths of a litre from the lung.'),
  'dead-space': range(15, 60, 'A breath wastes between a sixth and, in severe lung disease, about half.'),
  'alveolar-ventilation-factor': range(
    0.85,
    0.88,
    'It follows from the units, with body temperature at 37 °C.'
  ),
  'co2-tension': range(25, 60, 'Ventilation is not planned for CO2 tensions outside.'),
  'circuit-volume': range(1, 12, 'From a small child’s or very compact circle to a large adult one.'),
  'co2-rise': range(0, 120, 'Published rises run from a seventh to three quarters.'),
  'absorbent-capacity': range(
    30,
    260,
    'Above 260 L/kg is more than the calcium hydroxide in soda lime could bind.'
  ),
  'composition-share': range(50, 100, 'Calcium hydroxide is the bulk of soda lime.'),
  'absorbent-limit': range(200, 330, 'Pure calcium hydroxide could bind 325 L/kg.'),
  'process-co2': range(0.5, 0.7, 'It follows from two molar masses.'),
  'warming-potential.volatile': range(
    5,
    10000,
    'From halothane over 500 years to desflurane over 20, with the spread between sets.'
  ),
  'warming-potential.nitrous-oxide': range(
    100,
    350,
    'Assessment reports run from 130 over 500 years to 310.'
  ),
  'capture-efficiency': range(0, 100, 'A share.'),
  'oxygen-in-air': range(20.9, 21, 'Dry air is the same everywhere.'),
  'oxygen-per-bed-day': range(0.1, 3, 'A factor of a few about the published figure.'),
  'oxygen-flow': range(0.5, 15, 'The range of a ward flowmeter.'),
  'oxygen-emissions': range(
    0.02,
    2,
    'Separating and moving a cubic metre takes about a kilowatt-hour, at any grid’s intensity.'
  ),
  'pipe-loss': range(0, 100, 'A share.'),
  'machine-power': range(20, 500, 'From a sleeping monitor to a workstation with all its heaters.'),
  'machine-life': range(
    3,
    25,
    'Nobody plans to replace a workstation within three years or to keep it beyond 25.'
  ),
  'machine-flow': range(0, 500, 'Leaks and sample flows are below half a litre a minute.'),
  'intravenous-emissions': range(0.01, 5, 'A factor of ten about the published figure.'),
  'propofol-rate': range(2, 15, 'Outside lies no maintenance rate that was published as an average.'),
  'propofol-emissions': range(1, 1000, 'Making medicines emits from a few to hundreds of kg per kg.'),
  'exposure-limit': range(0.5, 200, 'Published limits run from 2 to 100 ppm.'),
  'air-changes': range(3, 60, 'From a ward room to a laminar-flow theatre.'),
  'measured-air': range(0, 50, 'Above it a recovery room would exceed most countries’ limits.'),
  'discount-rate': range(-2, 20, 'Public appraisal uses low single figures, private money more.'),
  'carbon-value': range(0, 2000, 'Published values run from a few to several hundred per tonne.'),
  'electricity-intensity': range(5, 1200, 'From all hydropower to all lignite.')
};

/**
 * Why a value of the user's own cannot stand in for a published one, as a sentence that says what is allowed; null
 * where it can.
 */
export function checkOverride(set: ReferenceSet, override: Override): string | null {
  const { constant: id, value, unit, reason } = override;
  const published = set.constants.get(id);
  if (published === undefined)
    return `Reference set ${set.id} has no constant “${id}”: choose one from the evidence sheet.`;
  if (unit !== published.unit)
    return `${published.name}: the unit “${unit}” was given; it must be “${published.unit}”.`;
  if (reason.trim() === '')
    return `${published.name}: a reason is needed, so that a reader knows why ${published.printed} ${unit} does not stand.`;
  const plausible = plausibleRanges[published.kind];
  if (!Number.isFinite(value) || plausible === undefined || value < plausible.low || value > plausible.high) {
    const allowed = plausible === undefined ? 'none' : `${plausible.low} to ${plausible.high} ${unit}`;
    return `${published.name}: ${value} was given; allowed is ${allowed}. ${plausible?.because ?? ''}`.trim();
  }
  return null;
}
