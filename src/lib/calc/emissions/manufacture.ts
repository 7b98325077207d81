/** What was emitted to make what a year takes: agents, machines and consumables, each where a figure is entered for it. */
import type { Agent, AgentSupply, Machine, Site } from '../input.ts';
import type { MakingKind } from '../estimate-types.ts';
import type { ReferenceSet } from '../reference/reference-set.ts';
import { take } from '../reference/reference-set.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';

/** A line of what is made. Lines without a figure are not there: they are left out, and said to be. */
export interface Made {
  readonly kind: MakingKind;
  /** The agent, or the id of the machine. */
  readonly subject: string | null;
  readonly activity: Quantity;
  readonly activityUnit: string;
  readonly factor: Quantity;
  readonly co2eKg: Quantity;
}

const boughtMass = formula<{ liquidMl: number; unusablePercent: number; densityGPerMl: number }>({
  id: 'emissions.bought-mass',
  yields: 'Agent that has to be bought, as mass',
  words: 'liquid used, and the share of each bottle that cannot be used, times the density',
  expression: 'V * 100 / (100 - u) * d / 1000',
  inputs: {
    liquidMl: { symbol: 'V', unit: 'mL', words: 'liquid agent used' },
    unusablePercent: {
      symbol: 'u',
      unit: '%',
      words: 'share of a bottle that cannot be used',
      testRange: [0, 50]
    },
    densityGPerMl: { symbol: 'd', unit: 'g/mL', words: 'density of the liquid' }
  },
  unit: 'kg',
  source: 'definition',
  compute: ({ liquidMl, unusablePercent, densityGPerMl }) =>
    (((liquidMl * 100) / (100 - unusablePercent)) * densityGPerMl) / 1000
});

const machinesWorn = formula<{ units: readonly number[]; lifeYears: number; years: number }>({
  id: 'emissions.machines-worn',
  yields: 'Machines worn out in a year',
  words: 'machines that stand, or stand by, each by the share of its life that a year is',
  expression: 'sum(n) / L * t',
  inputs: {
    units: { symbol: 'n', unit: '1', words: 'machines' },
    lifeYears: { symbol: 'L', unit: 'year', words: 'planning life' },
    years: { symbol: 't', unit: 'year', words: 'the time' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ units, lifeYears, years }) => (units.reduce((sum, each) => sum + each, 0) / lifeYears) * years
});

const making = (id: string, yields: string, unit: 'kg' | '1', words: string) =>
  formula<{ amount: number; factor: number }>({
    id,
    yields,
    words: `${words} times emissions of making one`,
    expression: 'a * f',
    inputs: {
      amount: { symbol: 'a', unit, words },
      factor: {
        symbol: 'f',
        unit: unit === '1' ? 'kg CO2e' : `kg CO2e/${unit}`,
        words: 'emissions of making one'
      }
    },
    unit: 'kg CO2e',
    source: 'definition',
    compute: ({ amount, factor }) => amount * factor
  });
const ofAgent = making('emissions.making-agent', 'Emissions, making an agent', 'kg', 'kilograms bought');
const ofMachine = making('emissions.making-machine', 'Emissions, making machines', '1', 'machines worn out');
const ofConsumables = making(
  'emissions.making-consumables',
  'Emissions, making consumables',
  '1',
  'general anaesthetics'
);

/**
 * Machines count by the share of their life that a year is, as the year that is told is one in which nothing is bought; an
 * inventory of a year of purchase counts them whole (GHG Protocol, scope 3.2, from memory).
 */
export function manufacture(
  r: Reckoner,
  {
    liquidMl,
    machines,
    generalAnaesthetics
  }: {
    liquidMl: Readonly<Partial<Record<Agent, Quantity>>>;
    /** All that stand and stand by. */
    machines: readonly { readonly machine: Machine; readonly units: Quantity }[];
    /** Made when it is asked for. */
    generalAnaesthetics: () => Quantity;
  },
  { agents, site, reference }: { agents: readonly AgentSupply[]; site: Site; reference: ReferenceSet }
): readonly Made[] {
  const ofAgents = agents.flatMap(({ agent, manufactureKgCo2ePerKg, unusablePercent }): Made[] => {
    const liquid = liquidMl[agent];
    if (manufactureKgCo2ePerKg === null || liquid === undefined) return [];
    const activity = r.apply(boughtMass, {
      liquidMl: liquid,
      unusablePercent: r.cell(unusablePercent, '%', 'agents', agent, 'unusablePercent'),
      densityGPerMl: r.constant(take(reference, `${agent}.liquid-density`))
    });
    const factor = r.cell(manufactureKgCo2ePerKg, 'kg CO2e/kg', 'agents', agent, 'manufactureKgCo2ePerKg');
    return [
      {
        kind: 'makingAgents',
        subject: agent,
        activity,
        activityUnit: 'kg',
        factor,
        co2eKg: r.apply(ofAgent, { amount: activity, factor })
      }
    ];
  });
  const ofMachines = [...new Set(machines.map(({ machine }) => machine))].flatMap((machine): Made[] => {
    const { id, lifeYears, manufactureKgCo2ePerUnit } = machine;
    if (manufactureKgCo2ePerUnit === null) return [];
    const activity = r.apply(machinesWorn, {
      units: machines.filter((each) => each.machine === machine).map(({ units }) => units),
      lifeYears: r.cell(lifeYears, 'year', 'machines', id, 'lifeYears'),
      years: r.assumption(1, 'year', 'What is told is one year.')
    });
    const factor = r.cell(manufactureKgCo2ePerUnit, 'kg CO2e', 'machines', id, 'manufactureKgCo2ePerUnit');
    return [
      {
        kind: 'makingMachines',
        subject: id,
        activity,
        activityUnit: 'machines',
        factor,
        co2eKg: r.apply(ofMachine, { amount: activity, factor })
      }
    ];
  });
  if (site.consumablesKgCo2ePerCase === null) return [...ofAgents, ...ofMachines];
  const activity = generalAnaesthetics();
  const factor = r.cell(site.consumablesKgCo2ePerCase, 'kg CO2e', 'site', 'consumablesKgCo2ePerCase');
  return [
    ...ofAgents,
    ...ofMachines,
    {
      kind: 'makingConsumables',
      subject: null,
      activity,
      activityUnit: 'cases',
      factor,
      co2eKg: r.apply(ofConsumables, { amount: activity, factor })
    }
  ];
}
