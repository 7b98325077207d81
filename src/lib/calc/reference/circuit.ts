/** The circle system as it is where the machine says nothing of its own. */
import { constant } from './constant.ts';
import { millerSixthCircuits } from './sources.ts';

export const circuitConstants = [
  constant({
    id: 'circuit.volume',
    name: 'Volume of the circle system',
    value: 7,
    printed: '7',
    unit: 'L',
    conditions: 'adult: bag 3 L, absorber 2 L, hoses 2 L; 4–6 L elsewhere, so it is an input of the machine',
    source: millerSixthCircuits,
    evidence: 'read',
    kind: 'circuit-volume'
  })
];
