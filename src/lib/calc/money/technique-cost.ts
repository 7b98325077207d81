/**
 * What intravenous and regional anaesthesia take and cost: drugs, what of them is drawn up and not given, lines, sensors.
 * Of a year or of one case. What a volatile case uses as well (induction, opioids, blockers) is in none of it.
 */
import type { EstimateInput } from '../input.ts';
import { formula } from '../working/formula.ts';
import { once } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { Decimal, amount } from './decimal.ts';
import { sumCalled } from './sum-of-amounts.ts';

/** How much is done without a volatile agent. */
export interface TechniqueUse {
  readonly intravenousCases: Quantity;
  readonly intravenousH: Quantity;
  /** Propofol that patients get. */
  readonly propofolGivenG: Quantity;
  readonly regionalCases: Quantity;
}

export interface TechniqueAmounts {
  readonly propofolDrawnUpG: Quantity;
  readonly propofolWastedG: Quantity;
  readonly eegSensors: Quantity;
}

/** The cells with what these techniques take. */
export type TechniqueSupplies = Pick<EstimateInput, 'intravenous' | 'regional'>;

export const propofolDrawnUp = formula<{ givenG: number; wastedPercent: number }>({
  id: 'money.propofol-drawn-up',
  yields: 'Propofol drawn up',
  words: 'What patients get over the share of what is drawn up that they get.',
  expression: 'm / (1 - w / 100)',
  inputs: {
    givenG: { symbol: 'm', unit: 'g', words: 'propofol given' },
    wastedPercent: { symbol: 'w', unit: '%', words: 'share drawn up and not given' }
  },
  unit: 'g',
  source: 'definition',
  compute: ({ givenG, wastedPercent }) => givenG / (1 - wastedPercent / 100)
});

export const propofolWasted = formula<{ drawnUpG: number; givenG: number }>({
  id: 'money.propofol-wasted',
  yields: 'Propofol drawn up and not given',
  words: 'What is drawn up less what patients get.',
  expression: 'M - m',
  inputs: {
    drawnUpG: { symbol: 'M', unit: 'g', words: 'propofol drawn up' },
    givenG: { symbol: 'm', unit: 'g', words: 'propofol given' }
  },
  unit: 'g',
  source: 'definition',
  compute: ({ drawnUpG, givenG }) => drawnUpG - givenG
});

export const eegSensors = formula<{ cases: number; sensorPercent: number }>({
  id: 'money.eeg-sensors',
  yields: 'Sensors of processed EEG',
  words: 'Intravenous cases, times the share of them in which a sensor is used.',
  expression: 'n * s / 100',
  inputs: {
    cases: { symbol: 'n', unit: '1', words: 'intravenous cases' },
    sensorPercent: { symbol: 's', unit: '%', words: 'share of them with a sensor' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ cases, sensorPercent }) => (cases * sensorPercent) / 100
});

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

export interface TechniquePrices {
  readonly amountsOf: (use: TechniqueUse) => TechniqueAmounts;
  readonly costOf: (use: TechniqueUse) => Quantity<Decimal>;
}

/** What these techniques take, and what that costs, by their cells. */
export function techniquePrices(r: Reckoner, { intravenous, regional }: TechniqueSupplies): TechniquePrices {
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
  const amountsOf = ({ propofolGivenG, intravenousCases }: TechniqueUse): TechniqueAmounts => {
    const propofolDrawnUpG = r.apply(propofolDrawnUp, {
      givenG: propofolGivenG,
      wastedPercent: r.cell(intravenous.propofolWastedPercent, '%', 'intravenous', 'propofolWastedPercent')
    });
    return {
      propofolDrawnUpG,
      propofolWastedG: r.apply(propofolWasted, { drawnUpG: propofolDrawnUpG, givenG: propofolGivenG }),
      eegSensors: r.apply(eegSensors, {
        cases: intravenousCases,
        sensorPercent: r.cell(intravenous.eegSensorCasesPercent, '%', 'intravenous', 'eegSensorCasesPercent')
      })
    };
  };
  return {
    amountsOf,
    costOf: (use) => {
      const amounts = amountsOf(use);
      return r.apply(techniquesCost, {
        amounts: [
          r.apply(costOfPropofol, { used: amounts.propofolDrawnUpG, price: prices().propofol }),
          r.apply(costOfOtherDrugs, { used: use.intravenousH, price: prices().otherDrugs }),
          r.apply(costOfDisposables, { used: use.intravenousCases, price: prices().disposables }),
          r.apply(costOfEegSensors, { used: amounts.eegSensors, price: prices().sensor }),
          r.apply(costOfRegional, { used: use.regionalCases, price: prices().regional })
        ]
      });
    }
  };
}
