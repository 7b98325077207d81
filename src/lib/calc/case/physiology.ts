/** What the patient's size says about gas exchange: oxygen, CO2, blood flow, ventilation, volumes. */
import { formula } from '../working/formula.ts';

const loweErnst = 'Lowe HJ, Ernst EA. The Quantitative Practice of Anesthesia, 1981';
const lindahl = 'Lindahl SGE. Br J Anaesth 1989;62:70-6';

const byMetabolicSize = (id: string, yields: string, unit: string) =>
  formula<{ coefficient: number; weightKg: number; exponent: number }>({
    id,
    yields,
    words: 'a coefficient times body weight to the power of three quarters',
    expression: 'c * W ^ b',
    inputs: {
      coefficient: { symbol: 'c', unit: `${unit}/kg^0.75`, words: 'per weight to the power' },
      weightKg: { symbol: 'W', unit: 'kg', words: 'body weight', testRange: [3, 200] },
      exponent: { symbol: 'b', unit: '1', words: 'exponent', testRange: [0.5, 1] }
    },
    unit,
    source: loweErnst,
    empirical: true,
    compute: ({ coefficient, weightKg, exponent }) => coefficient * weightKg ** exponent
  });

export const oxygenUptake = byMetabolicSize('case.oxygen-uptake', 'Oxygen consumption', 'mL/min');
export const co2Production = byMetabolicSize('case.co2-production', 'CO2 production', 'mL/min');
export const cardiacOutput = byMetabolicSize('case.cardiac-output', 'Cardiac output', 'L/min');

const byChildsWeight = (id: string, yields: string) =>
  formula<{ slope: number; weightKg: number; intercept: number }>({
    id,
    yields,
    words: 'a straight line by body weight, measured in children under anaesthesia',
    expression: 'a * W + b',
    inputs: {
      slope: { symbol: 'a', unit: 'mL/min/kg', words: 'per kilogram' },
      weightKg: { symbol: 'W', unit: 'kg', words: 'body weight', testRange: [3, 25] },
      intercept: { symbol: 'b', unit: 'mL/min', words: 'constant part' }
    },
    unit: 'mL/min',
    source: lindahl,
    compute: ({ slope, weightKg, intercept }) => slope * weightKg + intercept
  });

export const childOxygenUptake = byChildsWeight('case.child-oxygen-uptake', 'Oxygen consumption of a child');
export const childCo2Production = byChildsWeight('case.child-co2-production', 'CO2 production of a child');

/** Between the heaviest child of the children's lines and the lightest adult of the adult's curve. */
const bridge = (id: string, yields: string, unit: string) =>
  formula<{ atChild: number; atAdult: number; weightKg: number; childKg: number; adultKg: number }>({
    id,
    yields,
    words:
      'a power of body weight through the child’s figure at its limit and the adult’s at its own, without a step',
    expression: 'A * 10 ^ (log10(B / A) * log10(W / w_c) / log10(w_a / w_c))',
    inputs: {
      atChild: { symbol: 'A', unit, words: 'at the end of the children’s line' },
      atAdult: { symbol: 'B', unit, words: 'at the beginning of the adult’s curve' },
      weightKg: { symbol: 'W', unit: 'kg', words: 'body weight', testRange: [25, 60] },
      childKg: { symbol: 'w_c', unit: 'kg', words: 'end of the children’s line', testRange: [20, 30] },
      adultKg: { symbol: 'w_a', unit: 'kg', words: 'beginning of the adult’s curve', testRange: [50, 70] }
    },
    unit,
    source: 'interpolation of this project',
    compute: ({ atChild, atAdult, weightKg, childKg, adultKg }) =>
      atChild * (atAdult / atChild) ** (Math.log(weightKg / childKg) / Math.log(adultKg / childKg))
  });

export const gasExchangeBetween = bridge(
  'case.gas-exchange-between-child-and-adult',
  'Gas exchange between child and adult',
  'mL/min'
);
export const residualBetween = bridge(
  'case.residual-between-child-and-adult',
  'Functional residual capacity between child and adult',
  'mL'
);

/** CO2 to be breathed out under insufflation. */
export const co2UnderPneumoperitoneum = formula<{ co2MlPerMin: number; risePercent: number }>({
  id: 'case.co2-under-pneumoperitoneum',
  yields: 'CO2 elimination under pneumoperitoneum',
  words: 'CO2 production raised by the share that insufflation adds',
  expression: 'V * (1 + r / 100)',
  inputs: {
    co2MlPerMin: { symbol: 'V', unit: 'mL/min', words: 'CO2 production' },
    risePercent: { symbol: 'r', unit: '%', words: 'rise under pneumoperitoneum' }
  },
  unit: 'mL/min',
  source: 'Mullet CE et al. Anesth Analg 1993;76:622-6',
  compute: ({ co2MlPerMin, risePercent }) => co2MlPerMin * (1 + risePercent / 100)
});

/** CO2 elimination over a time in which it changes evenly. */
export const meanOfEvenChange = formula<{ fromMlPerMin: number; untilMlPerMin: number }>({
  id: 'case.co2-mean-of-even-change',
  yields: 'CO2 elimination, mean of a time in which it changes evenly',
  words: 'half of what it is at the beginning and at the end together',
  expression: '(a + b) / 2',
  inputs: {
    fromMlPerMin: { symbol: 'a', unit: 'mL/min', words: 'CO2 elimination at the beginning' },
    untilMlPerMin: { symbol: 'b', unit: 'mL/min', words: 'CO2 elimination at the end' }
  },
  unit: 'mL/min',
  source: 'definition of a mean',
  compute: ({ fromMlPerMin, untilMlPerMin }) => (fromMlPerMin + untilMlPerMin) / 2
});

/** Alveolar ventilation that keeps arterial CO2 where it is to be. */
export const alveolarVentilation = formula<{ factor: number; co2MlPerMin: number; arterialMmHg: number }>({
  id: 'case.alveolar-ventilation',
  yields: 'Alveolar ventilation',
  words: 'CO2 elimination times the factor of the alveolar ventilation equation, divided by arterial CO2',
  expression: 'k * V / P',
  inputs: {
    factor: { symbol: 'k', unit: 'mmHg L/mL', words: 'factor that joins the units' },
    co2MlPerMin: { symbol: 'V', unit: 'mL/min', words: 'CO2 elimination' },
    arterialMmHg: { symbol: 'P', unit: 'mmHg', words: 'arterial CO2 to be kept' }
  },
  unit: 'L/min',
  source: 'alveolar ventilation equation',
  compute: ({ factor, co2MlPerMin, arterialMmHg }) => (factor * co2MlPerMin) / arterialMmHg
});

/** Effective volume of the lung for the agent: gas, and tissue and blood that hold agent too. */
export const lungVolume = formula<{
  residualL: number;
  tissueL: number;
  bloodGas: number;
  weightKg: number;
  standardKg: number;
}>({
  id: 'case.lung-volume',
  yields: 'Effective lung volume',
  words: 'gas volume plus tissue and blood volume times blood/gas coefficient, scaled by body weight',
  expression: '(V + B * L) * W / W_0',
  inputs: {
    residualL: { symbol: 'V', unit: 'L', words: 'functional residual capacity' },
    tissueL: { symbol: 'B', unit: 'L', words: 'lung tissue and blood' },
    bloodGas: { symbol: 'L', unit: '1', words: 'blood/gas partition coefficient' },
    weightKg: { symbol: 'W', unit: 'kg', words: 'body weight' },
    standardKg: { symbol: 'W_0', unit: 'kg', words: 'weight of the standard adult' }
  },
  unit: 'L',
  source: 'volumes of a 70 kg adult, scaled by weight',
  compute: ({ residualL, tissueL, bloodGas, weightKg, standardKg }) =>
    ((residualL + tissueL * bloodGas) * weightKg) / standardKg
});

/** The same where the gas volume is known by itself: in children, and in obesity. */
export const lungVolumeOf = formula<{
  residualMl: number;
  tissueL: number;
  bloodGas: number;
  weightKg: number;
  standardKg: number;
}>({
  id: 'case.lung-volume-of-residual',
  yields: 'Effective lung volume',
  words: 'gas volume, plus tissue and blood volume scaled by body weight times blood/gas coefficient',
  expression: 'V / 1000 + B * L * W / W_0',
  inputs: {
    residualMl: { symbol: 'V', unit: 'mL', words: 'functional residual capacity of this patient' },
    tissueL: { symbol: 'B', unit: 'L', words: 'lung tissue and blood' },
    bloodGas: { symbol: 'L', unit: '1', words: 'blood/gas partition coefficient' },
    weightKg: { symbol: 'W', unit: 'kg', words: 'body weight' },
    standardKg: { symbol: 'W_0', unit: 'kg', words: 'weight of the standard adult' }
  },
  unit: 'L',
  source: 'volumes of a 70 kg adult, scaled by weight',
  compute: ({ residualMl, tissueL, bloodGas, weightKg, standardKg }) =>
    residualMl / 1000 + (tissueL * bloodGas * weightKg) / standardKg
});

/** Gas volume of the lung of a child. */
export const childResidualCapacity = formula<{ perKgMl: number; weightKg: number }>({
  id: 'case.child-residual-capacity',
  yields: 'Functional residual capacity of a child',
  words: 'millilitres per kilogram times body weight',
  expression: 'c * W',
  inputs: {
    perKgMl: { symbol: 'c', unit: 'mL/kg', words: 'per kilogram' },
    weightKg: { symbol: 'W', unit: 'kg', words: 'body weight', testRange: [3, 25] }
  },
  unit: 'mL',
  source: 'Anesthesiology 1990;73:876-81 (citation from memory)',
  compute: ({ perKgMl, weightKg }) => perKgMl * weightKg
});

/** Gas volume of an adult's lung. */
export const adultResidualCapacity = formula<{ residualL: number; weightKg: number; standardKg: number }>({
  id: 'case.adult-residual-capacity',
  yields: 'Functional residual capacity of an adult',
  words: 'volume in the standard adult, scaled by body weight',
  expression: '1000 * V * W / W_0',
  inputs: {
    residualL: { symbol: 'V', unit: 'L', words: 'functional residual capacity of the standard adult' },
    weightKg: { symbol: 'W', unit: 'kg', words: 'body weight' },
    standardKg: { symbol: 'W_0', unit: 'kg', words: 'weight of the standard adult' }
  },
  unit: 'mL',
  source: 'volumes of a 70 kg adult, scaled by weight',
  compute: ({ residualL, weightKg, standardKg }) => (1000 * residualL * weightKg) / standardKg
});

/** Volume of one tissue compartment. */
export const tissueVolume = formula<{ volumeL: number; weightKg: number; standardKg: number }>({
  id: 'case.tissue-volume',
  yields: 'Volume of a tissue compartment',
  words: 'volume in the standard adult, scaled by body weight',
  expression: 'V * W / W_0',
  inputs: {
    volumeL: { symbol: 'V', unit: 'L', words: 'volume in the standard adult' },
    weightKg: { symbol: 'W', unit: 'kg', words: 'body weight' },
    standardKg: { symbol: 'W_0', unit: 'kg', words: 'weight of the standard adult' }
  },
  unit: 'L',
  source: 'volumes of a 70 kg adult, scaled by weight',
  compute: ({ volumeL, weightKg, standardKg }) => (volumeL * weightKg) / standardKg
});
