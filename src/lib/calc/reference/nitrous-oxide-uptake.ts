/** By what nitrous oxide is followed as a gas that is taken up, as sets from 2026-3 on have it. */
import { agentConstants } from './agents.ts';
import { constant } from './constant.ts';
import type { Constant } from './constant.ts';

/** Solubilities that earlier sets hold without using them. */
const solubilities: readonly Constant[] = agentConstants
  .filter(({ id }) =>
    [
      'nitrous-oxide.blood-gas',
      'nitrous-oxide.vessel-rich-blood',
      'nitrous-oxide.muscle-blood',
      'nitrous-oxide.fat-blood'
    ].includes(id)
  )
  .map((record) => {
    const { unusedBecause, ...used } = record;
    if (unusedBecause === undefined) throw new Error(`“${record.id}” was in use before.`);
    return used;
  });

const drawnInShare = constant({
  id: 'nitrous-oxide.drawn-in-share',
  name: 'Share of the nitrous oxide that the lung takes up in whose place more gas is inspired',
  value: 100,
  printed: '100',
  unit: '%',
  conditions:
    'ventilation that carbon dioxide is told by is what is breathed out, so that what is taken up is inspired beyond it; at 0 % less would be breathed out instead',
  source: {
    title: 'Modelling choice of this project',
    locator: 'concentration effect and second-gas effect as textbooks tell them, from memory'
  },
  evidence: 'memory',
  kind: 'drawn-in-share'
});

export const nitrousOxideUptake: readonly Constant[] = [...solubilities, drawnInShare];
