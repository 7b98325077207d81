/**
 * The ledger of a year's emissions: for each line its activity, its factor and what they make. The lines in the total are
 * those of the estimate; what stands beside it is told, and in no total.
 */
import type { Agent, AgentSupply, RegionalSupply, Site } from '../input.ts';
import type { LedgerKind } from '../estimate-types.ts';
import { take } from '../reference/reference-set.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { AgentFate } from './agent-fate.ts';
import type { EmittingUse, WarmingContext } from './co2e-lines.ts';
import {
  absorbentLine,
  agentWarming,
  byFactor,
  electricityLine,
  intravenousLine,
  nitrousOxideLostWarming,
  nitrousOxideWarming,
  oxygenLine,
  regionalFactor,
  regionalLine,
  warmingPotential
} from './co2e-lines.ts';

export interface LedgerEntry {
  readonly kind: LedgerKind;
  /** The agent, the absorbent or the machine; null where the line is one. */
  readonly subject: string | null;
  /** null: not given, and so missing, not 0. */
  readonly activity: Quantity | null;
  readonly activityUnit: string;
  readonly factor: Quantity | null;
  readonly co2eKg: Quantity | null;
  readonly isInTotal: boolean;
}

/** Agent that is paid for and lost at filling, as mass. */
export const lostAtFilling = formula<{ liquidMl: number; unusablePercent: number; densityGPerMl: number }>({
  id: 'emissions.lost-at-filling',
  yields: 'Agent lost at filling',
  words:
    'what has to be bought beyond the liquid used, where a share of each bottle cannot be used; it evaporates',
  expression: 'V * u / (100 - u) * d / 1000',
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
    (((liquidMl * unusablePercent) / (100 - unusablePercent)) * densityGPerMl) / 1000
});

const electricityOfAir = formula<{ airM3: number; kWhPerM3: number }>({
  id: 'emissions.electricity-of-air',
  yields: 'Electricity for medical air',
  words: 'air used times the electricity to compress and dry a cubic metre',
  expression: 'a * e',
  inputs: {
    airM3: { symbol: 'a', unit: 'm3', words: 'air' },
    kWhPerM3: { symbol: 'e', unit: 'kWh/m3', words: 'electricity of a cubic metre' }
  },
  unit: 'kWh',
  source: 'definition',
  compute: ({ airM3, kWhPerM3 }) => airM3 * kWhPerM3
});
const medicalAirLine = byFactor(
  'emissions.medical-air',
  'Emissions, medical air',
  'electricity for medical air',
  'kWh',
  'emissions of the site’s electricity'
);
const marketElectricityLine = byFactor(
  'emissions.electricity-by-contract',
  'Emissions, electricity by contract',
  'electricity',
  'kWh',
  'emissions of the electricity by contract'
);

export function ledgerEntries(
  r: Reckoner,
  {
    use,
    fate,
    liquidMl,
    airM3,
    absorbentNames
  }: {
    use: EmittingUse;
    fate: Readonly<Partial<Record<Agent, AgentFate>>>;
    liquidMl: Readonly<Partial<Record<Agent, Quantity>>>;
    airM3: Quantity;
    /** In the order of the absorbents in use. */
    absorbentNames: readonly string[];
  },
  context: WarmingContext & {
    readonly site: Site;
    readonly agents: readonly AgentSupply[];
    readonly regional: RegionalSupply;
  }
): readonly LedgerEntry[] {
  const { reference, site } = context;
  const entry = (
    kind: LedgerKind,
    activityUnit: string,
    activity: Quantity | null,
    factor: Quantity | null,
    co2eKg: Quantity | null,
    more: Partial<LedgerEntry> = {}
  ): LedgerEntry => ({
    kind,
    subject: null,
    activity,
    activityUnit,
    factor,
    co2eKg,
    isInTotal: true,
    ...more
  });
  const given = Object.keys(fate) as Agent[];
  const nitrousOxide = warmingPotential(r, 'nitrous-oxide', context);
  const oxygen = r.constant(take(reference, 'oxygen.co2e'));
  const grid = r.cell(site.electricityKgCo2ePerKWh, 'kg CO2e/kWh', 'site', 'electricityKgCo2ePerKWh');
  const intravenous = r.constant(take(reference, 'intravenous.co2e'));
  const ofRegional = regionalFactor(r, context.regional);
  const { nitrousOxideLostKg: lost } = use;

  const agentEntry = (kind: LedgerKind, agent: Agent, massKg: Quantity, isInTotal: boolean): LedgerEntry => {
    const potential = warmingPotential(r, agent, context);
    const co2eKg = r.apply(agentWarming, { massKg, potential });
    return entry(kind, 'kg', massKg, potential, co2eKg, { subject: agent, isInTotal });
  };
  const filling = given.flatMap((agent): LedgerEntry[] => {
    const liquid = liquidMl[agent];
    const supply = context.agents.find((each) => each.agent === agent);
    if (liquid === undefined || supply === undefined) return [];
    const massKg = r.apply(lostAtFilling, {
      liquidMl: liquid,
      unusablePercent: r.cell(supply.unusablePercent, '%', 'agents', agent, 'unusablePercent'),
      densityGPerMl: r.constant(take(reference, `${agent}.liquid-density`))
    });
    return [agentEntry('lostAtFilling', agent, massKg, false)];
  });
  const contracted = site.electricityMarketKgCo2ePerKWh;
  const byContract =
    contracted === null ? null : r.cell(contracted, 'kg CO2e/kWh', 'site', 'electricityMarketKgCo2ePerKWh');
  const airKWh =
    site.medicalAirKWhPerM3 === null
      ? null
      : r.apply(electricityOfAir, {
          airM3,
          kWhPerM3: r.cell(site.medicalAirKWhPerM3, 'kWh/m3', 'site', 'medicalAirKWhPerM3')
        });

  return [
    ...given.flatMap((agent) => {
      const massKg = fate[agent]?.ventedKg;
      return massKg === undefined ? [] : [agentEntry('agents', agent, massKg, true)];
    }),
    entry(
      'nitrousOxide',
      'kg',
      use.nitrousOxideKg,
      nitrousOxide,
      r.apply(nitrousOxideWarming, { massKg: use.nitrousOxideKg, potential: nitrousOxide })
    ),
    entry(
      'nitrousOxideLost',
      'kg',
      lost,
      nitrousOxide,
      lost === null ? null : r.apply(nitrousOxideLostWarming, { massKg: lost, potential: nitrousOxide })
    ),
    entry('gases', 'm³', use.oxygenM3, oxygen, r.apply(oxygenLine, { amount: use.oxygenM3, factor: oxygen })),
    ...use.absorbents.map(({ massKg, kgCo2ePerKg: factor }, index) =>
      entry(
        'absorbent',
        'kg',
        massKg,
        factor,
        factor === null ? null : r.apply(absorbentLine, { amount: massKg, factor }),
        { subject: absorbentNames[index] ?? null }
      )
    ),
    entry(
      'electricity',
      'kWh',
      use.electricityKWh,
      grid,
      r.apply(electricityLine, { amount: use.electricityKWh, factor: grid })
    ),
    entry(
      'intravenous',
      'h',
      use.intravenousH,
      intravenous,
      r.apply(intravenousLine, { amount: use.intravenousH, factor: intravenous })
    ),
    entry(
      'regional',
      'cases',
      use.regionalCases,
      ofRegional,
      ofRegional === null ? null : r.apply(regionalLine, { amount: use.regionalCases, factor: ofRegional })
    ),
    ...use.made.map(({ kind, subject, activity, activityUnit, factor, co2eKg }) =>
      entry(kind, activityUnit, activity, factor, co2eKg, { subject })
    ),
    ...filling,
    entry(
      'electricityByContract',
      'kWh',
      use.electricityKWh,
      byContract,
      byContract === null
        ? null
        : r.apply(marketElectricityLine, { amount: use.electricityKWh, factor: byContract }),
      { isInTotal: false }
    ),
    entry(
      'medicalAir',
      'kWh',
      airKWh,
      grid,
      airKWh === null ? null : r.apply(medicalAirLine, { amount: airKWh, factor: grid }),
      { isInTotal: false }
    )
  ];
}
