/** Organ volumes and blood flows of the reference adult, from which two of the body models are summed. */
import { constant } from './constant.ts';
import { organFlows, organVolumes } from './sources.ts';

const notInAGroup =
  'Belongs to none of the compartments: the blood that goes there returns to the lung as direct shunt.';
const insideLiver = 'Already inside the total flow of the liver.';

interface Organ {
  readonly organ: string;
  readonly words: string;
  readonly volume?: number;
  readonly flow?: number;
  readonly unusedBecause?: string;
  readonly flowUnusedBecause?: string;
}

const organs: readonly Organ[] = [
  { organ: 'adipose', words: 'adipose tissue', volume: 0.2086, flow: 10.74 },
  { organ: 'bone', words: 'bone', volume: 0.07231, flow: 9.719, unusedBecause: notInAGroup },
  { organ: 'brain', words: 'brain', volume: 0.01931, flow: 28.93 },
  {
    organ: 'gut',
    words: 'gut (drains to the liver)',
    volume: 0.0158,
    flow: 47.52,
    flowUnusedBecause: insideLiver
  },
  { organ: 'heart', words: 'heart', volume: 0.004563, flow: 9.917 },
  { organ: 'kidney', words: 'kidney', volume: 0.00419, flow: 51.24 },
  { organ: 'liver', words: 'liver (flow: total)', volume: 0.02448, flow: 59.92 },
  {
    organ: 'lung',
    words: 'lung',
    volume: 0.007235,
    unusedBecause: 'The lung is a compartment of its own in the model.'
  },
  { organ: 'muscle', words: 'muscle', volume: 0.3842, flow: 30.99 },
  { organ: 'skin', words: 'skin', volume: 0.0332, flow: 12.4 },
  {
    organ: 'spleen',
    words: 'spleen (drains to the liver)',
    volume: 0.002467,
    flow: 3.182,
    flowUnusedBecause: insideLiver
  },
  { organ: 'thyroid', words: 'thyroid', volume: 0.0003, flow: 3.7 },
  { organ: 'rest', words: 'rest of the body', volume: 0.05182, flow: 4.19, unusedBecause: notInAGroup },
  { organ: 'cardiac-output', words: 'the whole body (cardiac output)', flow: 231.4 }
];

const volumes = organs.flatMap(({ organ, words, volume, unusedBecause }) =>
  volume === undefined
    ? []
    : constant({
        id: `organ.${organ}.volume`,
        name: `Volume of ${words}`,
        value: volume,
        printed: String(volume),
        unit: 'L/kg',
        conditions: 'adult human, per kg of body weight',
        source: organVolumes,
        evidence: 'read',
        kind: 'organ-volume',
        ...(unusedBecause === undefined ? {} : { unusedBecause })
      })
);

const flows = organs.flatMap(({ organ, words, flow, unusedBecause, flowUnusedBecause = unusedBecause }) =>
  flow === undefined
    ? []
    : constant({
        id: `organ.${organ}.flow`,
        name: `Blood flow of ${words}`,
        value: flow,
        printed: String(flow),
        unit: 'mL/min/kg^0.75',
        conditions: 'adult human',
        source: organFlows,
        evidence: 'read',
        kind: 'organ-flow',
        ...(flowUnusedBecause === undefined ? {} : { unusedBecause: flowUnusedBecause })
      })
);

export const organConstants = [...volumes, ...flows];
