import { constant } from './constant.ts';
import { gasExchangeConstants } from './gas-exchange.ts';
import { insufflationCourse } from './insufflation-course.ts';
import { nextSet } from './next-set.ts';
import { obesityConstants } from './obesity.ts';
import { otherMacAndSolubility } from './other-mac-and-solubility.ts';
import { referenceSet2026 } from './reference-set-2026-1.ts';
import type { ReferenceSet } from './reference-set.ts';
import { higuchi2001 } from './sources.ts';
import { addedWarmingPotentials } from './warming-potentials-2026-2.ts';

const alkaliFreeLime = constant({
  id: 'absorbent.alkali-free-lime.capacity',
  name: 'CO2 that lime without strong base takes up in clinical use',
  value: 90,
  printed: '91 (SD 7), the worse of two on the bench',
  unit: 'L/kg',
  conditions: 'bench, 300 mL/min CO2, fresh gas 0.5 L/min; the better of two took 123 (SD 2)',
  source: {
    title: 'Japanese grants database, project 15790834, report for 2003',
    locator: 'official summary of results'
  },
  evidence: 'read',
  alternatives: [
    {
      value: 66,
      printed: '66 (55–76)',
      source: higuchi2001,
      evidence: 'read',
      whyNot: 'One product of 2001, in patients; the first set has it.'
    }
  ],
  preferredBecause:
    'It lies between the clinical 66 and the better lime’s 123 L/kg, and is rounded as the limes differ by more.',
  kind: 'absorbent-capacity',
  unusedBecause: 'Shown as a guide beside the absorbent’s own capacity, which is an input.',
  guideFor: 'absorbents.capacityLPerKg'
});

const spillShare = constant({
  id: 'circuit.spill-share-inspired',
  name: 'Share of the spilled gas that leaves as inspired gas',
  value: 100,
  printed: '33–100',
  unit: '%',
  conditions:
    '33 %, the dead-space share, where the relief valve sits on the expiratory side of an efficient circle; 100 % where it spills what is inspired',
  source: {
    title: 'Mass balance of the circle',
    locator: 'placement of valves: Anesthesiology 1968 (title only, in a reference list)'
  },
  evidence: 'memory',
  kind: 'spill-share',
  unusedBecause:
    'The share is an input of the machine; an empty cell means all of it, and draws run over this range.'
});

const leastSpilledShare = constant({
  id: 'measured-use.least-spilled-share',
  name: 'Share of a case’s liquid that must be spill for a measurement to say anything about practice',
  value: 5,
  printed: '5',
  unit: '%',
  conditions: 'below it the measured use of today’s plan is not carried over to another',
  source: {
    title: 'Planning value of this project',
    locator: 'a spill below it is less than the error of the uptake that it is found from'
  },
  evidence: 'memory',
  kind: 'spill-share'
});

/**
 * The second set: what was read since the first. Gas exchange under anaesthesia, the course of insufflation in time, a
 * bridge from children to adults, lung and lean tissue in obesity, lime without strong base, and further warming
 * potentials.
 */
export const referenceSet2026Second: ReferenceSet = nextSet(referenceSet2026, {
  id: '2026-2',
  date: '2026-07-01',
  brings:
    'Gas exchange as measured under anaesthesia, insufflation followed in time, no step between children and adults, lung and lean tissue in obesity, lime without strong base, and further warming potentials. What is measured or bought changes the spill alone.',
  records: [
    ...gasExchangeConstants,
    ...insufflationCourse,
    ...obesityConstants,
    ...addedWarmingPotentials,
    ...otherMacAndSolubility,
    spillShare,
    leastSpilledShare,
    alkaliFreeLime
  ]
});
