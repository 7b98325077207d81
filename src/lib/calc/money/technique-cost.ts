/**
 * What intravenous and regional anaesthesia cost, of a year or of one case: drugs, what of them is drawn up and not given
 * among them, lines, sensors, sets. What a volatile case uses as well (induction, opioids, blockers) is in none of it.
 */
import type { EstimateInput } from '../input.ts';
import { formula } from '../working/formula.ts';
import { once } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { Decimal, amount } from './decimal.ts';
import { sumCalled } from './sum-of-amounts.ts';

/** What is done without a volatile agent, and what that takes. */
export interface TechniqueUse {
  readonly intravenousCases: Quantity;
  readonly intravenousH: Quantity;
  readonly propofolDrawnUpG: Quantity;
  readonly eegSensors: Quantity;
  readonly regionalCases: Quantity;
}

/** The cells with their prices. */
export type TechniqueSupplies = Pick<EstimateInput, 'intravenous' | 'regional'>;

const priced = (id: string, yields: string, used: string, unit: '1' | 'g' | 'h', price: string) =>
  formula<{ used: number; price: Decimal }, Decimal>({
    id,
    yields,
    words: `${used.charAt(0).toUpperCase()}${used.slice(1)}, times ${price}.`,
    expression: 'n * p',
    inputs: {
      used: { symbol: 'n', unit, words: used },
      price: { symbol: 'p', unit: unit === '1' ? 'currency' : `currency/${unit}`, words: price }
    },
    unit: 'currency',
    source: 'definition',
    compute: (given) => given.price.times(given.used)
  });

export const costOfPropofol = priced(
  'money.cost-of-propofol',
  'Cost of propofol',
  'propofol drawn up',
  'g',
  'the price of a gram'
);
export const costOfOtherDrugs = priced(
  'money.cost-of-other-drugs',
  'Cost of other drugs of intravenous anaesthesia',
  'hours of intravenous anaesthesia',
  'h',
  'the price of the other drugs of an hour'
);
export const costOfDisposables = priced(
  'money.cost-of-disposables',
  'Cost of pump lines, syringes and their disposal',
  'intravenous cases',
  '1',
  'the price of what one takes'
);
export const costOfEegSensors = priced(
  'money.cost-of-eeg-sensors',
  'Cost of sensors of processed EEG',
  'sensors used',
  '1',
  'the price of one'
);
export const costOfRegional = priced(
  'money.cost-of-regional',
  'Cost of drugs and material of regional anaesthesia',
  'regional cases',
  '1',
  'the price of what one takes'
);

const techniquesCost = sumCalled(
  'money.techniques-cost',
  'Cost of intravenous and regional drugs and material'
);

/** What a use of these techniques costs, by the prices in their cells. */
export function techniquePrices(
  r: Reckoner,
  { intravenous, regional }: TechniqueSupplies
): (use: TechniqueUse) => Quantity<Decimal> {
  const price = (
    given: string,
    unit: 'currency' | 'currency/g' | 'currency/h',
    ...path: readonly [string, string]
  ): Quantity<Decimal> => r.cell(amount(given), unit, ...path);
  const prices = once(() => ({
    propofol: price(intravenous.propofolPricePerG, 'currency/g', 'intravenous', 'propofolPricePerG'),
    otherDrugs: price(intravenous.otherDrugsPerH, 'currency/h', 'intravenous', 'otherDrugsPerH'),
    disposables: price(intravenous.disposablesPerCase, 'currency', 'intravenous', 'disposablesPerCase'),
    sensor: price(intravenous.eegSensorPrice, 'currency', 'intravenous', 'eegSensorPrice'),
    regional: price(regional.pricePerCase, 'currency', 'regional', 'pricePerCase')
  }));
  return (use) =>
    r.apply(techniquesCost, {
      amounts: [
        r.apply(costOfPropofol, { used: use.propofolDrawnUpG, price: prices().propofol }),
        r.apply(costOfOtherDrugs, { used: use.intravenousH, price: prices().otherDrugs }),
        r.apply(costOfDisposables, { used: use.intravenousCases, price: prices().disposables }),
        r.apply(costOfEegSensors, { used: use.eegSensors, price: prices().sensor }),
        r.apply(costOfRegional, { used: use.regionalCases, price: prices().regional })
      ]
    });
}
