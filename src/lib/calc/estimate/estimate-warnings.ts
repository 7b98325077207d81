import { caseConstants } from '../case/case-constants.ts';
import type { Caution, Estimate, ScenarioEstimate } from '../estimate-types.ts';
import { fleetWarnings } from '../fleet/fleet-warnings.ts';
import type { Agent, EstimateInput, Scenario } from '../input.ts';
import { plain } from '../working/plain.ts';
import { likelyCauses, reconciliationBounds } from '../reference/reconciliation-practice.ts';
import { captureWarnings } from './capture-warnings.ts';
import { scavengingWarnings } from './scavenging-warnings.ts';
import { changesTechnique, techniqueShares } from '../fleet/technique-shares.ts';

/** What a reader must know about an estimate as a whole, one sentence each. */
export function estimateWarnings(
  input: EstimateInput,
  scenarios: readonly ScenarioEstimate[],
  cautions: readonly Caution[]
): string[] {
  const failures = scenarios.flatMap(({ failed }) =>
    failed.map(
      ({ path, sentence }) => `${path} could not be computed and is left out of every total: ${sentence}`
    )
  );
  const warnings: string[] = [...cautions.map(({ sentence }) => sentence), ...new Set(failures)];
  const today = scenarios.find((_, index) => input.scenarios[index]?.baseline);
  for (const [agent, { estimateOverPurchase: ratio }] of Object.entries(today?.perYear.agents ?? {}))
    if (ratio !== null && (ratio < reconciliationBounds.low || ratio > reconciliationBounds.high))
      warnings.push(
        `Today’s estimate of ${agent} is ${Math.round(ratio * 100)} % of what was bought. ` +
          (ratio < 1 ? `Usual causes: ${likelyCauses.lessUsed}.` : `Usual causes: ${likelyCauses.moreUsed}.`)
      );
  for (const { agent, scaleToPurchases, bottlesBoughtPerYear, bottlesUsedElsewherePerYear } of input.agents) {
    if (
      bottlesBoughtPerYear !== null &&
      bottlesUsedElsewherePerYear !== null &&
      bottlesUsedElsewherePerYear >= bottlesBoughtPerYear &&
      bottlesUsedElsewherePerYear > 0
    )
      warnings.push(
        `All the ${agent} that was bought is said to be used elsewhere (${bottlesUsedElsewherePerYear} of ${bottlesBoughtPerYear} bottles), so today’s use is compared with no purchases${scaleToPurchases ? ' and not scaled' : ''}.`
      );
    else if (scaleToPurchases)
      warnings.push(
        bottlesBoughtPerYear === null
          ? `${agent} is to be scaled to purchases, but no purchases are given; it is not scaled.`
          : caseConstants(input.reference).leastSpilledShare === null ||
              meetsPurchases(today, input.agents, agent)
            ? `The use of ${agent} is scaled in every scenario so that today’s meets the purchases.`
            : `The use of ${agent} is to be scaled to purchases, and what was bought cannot be met: only the spill depends on practice, and what patients take up and circuits hold, with what was measured, stays as it is.`
      );
  }
  warnings.push(...input.scenarios.flatMap(chainedSwitches), ...fleetWarnings(input));
  const used = new Set(input.machines.map((machine) => machine.absorbent));
  const without = input.absorbents.filter(
    (absorbent) => used.has(absorbent.id) && absorbent.kgCo2ePerKg === null
  );
  if (without.length > 0)
    warnings.push(
      `Making of ${without.map((absorbent) => absorbent.name.toLowerCase()).join(' and ')} is left out of the emissions: no published figure was found and none is given.`
    );
  if (
    input.gases.nitrousOxideBoughtKgPerYear === null &&
    input.caseMix.some((row) => row.nitrousOxidePercent > 0)
  )
    warnings.push(
      'Nitrous oxide lost from the pipes is not counted, as no purchases are given; published losses are 50 to 96 % of what is bought.'
    );
  warnings.push(...moreNitrousOxideUsedThanBought(input, today));
  if (input.gases.nitrousOxideBoughtKgPerYear === null)
    for (const { name, nitrousOxideSupply } of input.scenarios)
      if (nitrousOxideSupply !== 'as-today')
        warnings.push(
          `“${name}” changes the supply of nitrous oxide, and no purchases are given: what it would save is not counted, its cost is. Enter on Prices how much is bought.`
        );
  warnings.push(
    ...techniqueWarnings(input),
    ...captureWarnings(input.scenarios),
    ...scavengingWarnings(input)
  );
  for (const override of input.reference.constants.values())
    if (override.override !== undefined)
      warnings.push(
        `${override.name}: ${override.value} ${override.unit} is used in place of the published ${override.override.publishedValue} ${override.unit}. Reason given: ${override.override.reason}`
      );
  return warnings;
}

/** Where today's cases use more nitrous oxide than was bought, nothing can have been lost: one of the two is wrong. */
function moreNitrousOxideUsedThanBought(input: EstimateInput, today: ScenarioEstimate | undefined): string[] {
  const bought = input.gases.nitrousOxideBoughtKgPerYear;
  const used = today?.perYear.nitrousOxideKg ?? 0;
  if (bought === null || used <= bought * (1 + rounding)) return [];
  const share = bought > 0 ? `, ${Math.round((100 * used) / bought)} % of what was bought` : '';
  return [
    `Today’s cases use ${used.toPrecision(3)} kg of nitrous oxide by the estimate${share}, so none is counted as lost from the pipes. Usual causes: ${likelyCauses.moreNitrousOxideUsed}.`
  ];
}

/** Relative difference below which two masses are told apart by rounding alone. */
const rounding = 1e-9;

/** A switch to an agent that is itself switched: a reader may expect both to be applied to a case. */
/** What a change of technique leaves out, as far as nobody has priced it. */
function techniqueWarnings({ scenarios, caseMix, intravenous, regional }: EstimateInput): string[] {
  const free = (prices: readonly string[]): boolean => prices.every((price) => Number(price) === 0);
  const isUnpriced = {
    intravenous: free([
      intravenous.propofolPricePerG,
      intravenous.otherDrugsPerH,
      intravenous.disposablesPerCase,
      intravenous.eegSensorPrice
    ]),
    regional: free([regional.pricePerCase])
  };
  return scenarios.flatMap((scenario) => {
    const changed = caseMix.filter((row) => changesTechnique(scenario, row));
    const to = (technique: 'intravenous' | 'regional') =>
      changed.some((row) =>
        techniqueShares(plain, scenario, row).some(
          (share) => share.technique === technique && share.technique !== row.technique
        )
      );
    const { name } = scenario;
    const withNitrousOxide = changed.filter(({ nitrousOxidePercent }) => nitrousOxidePercent > 0);
    return [
      ...(['intravenous', 'regional'] as const).flatMap((technique) =>
        to(technique) && isUnpriced[technique]
          ? [
              `“${name}” makes cases ${technique}, and ${technique} anaesthesia has no price yet: its drugs and material look free. Enter them on Prices.`
            ]
          : []
      ),
      ...(to('regional') && regional.kgCo2ePerCase === null
        ? [
            `“${name}” makes cases regional, and what regional anaesthesia emits is not given: it is left out of the emissions.`
          ]
        : []),
      ...(to('intravenous') && withNitrousOxide.length > 0
        ? [
            `Cases of ${withNitrousOxide.map((row) => `“${row.name}”`).join(', ')} that become intravenous under “${name}” are still given nitrous oxide, as their row says.`
          ]
        : [])
    ];
  });
}

function chainedSwitches({ name, agentSwitch }: Scenario): string[] {
  return (Object.entries(agentSwitch) as [Agent, Agent][]).flatMap(([given, instead]) => {
    const next = agentSwitch[instead];
    return given === instead || next === undefined || next === instead
      ? []
      : [
          `“${name}” gives ${instead} instead of ${given}, and ${next} instead of ${instead}. Each case changes once: those given ${given} today are given ${instead}.`
        ];
  });
}

/** Whether today's use of an agent, as it is scaled, is what was bought. */
function meetsPurchases(
  today: ScenarioEstimate | undefined,
  supplies: EstimateInput['agents'],
  agent: Agent
): boolean {
  const supply = supplies.find((each) => each.agent === agent);
  const use = today?.perYear.agents[agent];
  if (supply === undefined || use === undefined || supply.bottlesBoughtPerYear === null) return true;
  const bottles = supply.bottlesBoughtPerYear - (supply.bottlesUsedElsewherePerYear ?? 0);
  const boughtMl = (bottles * supply.bottleMl * (100 - supply.unusablePercent)) / 100;
  return Math.abs(use.liquidMl - boughtMl) <= 1e-9 * boughtMl;
}

/** The warnings of an estimate without cautions and restrictions, for a page that shows these by themselves. */
export function warningsBesideCautions({ warnings, cautions, restrictions }: Estimate): string[] {
  const shown = new Set([...cautions, ...restrictions].map(({ sentence }) => sentence));
  return warnings.filter((sentence) => !shown.has(sentence));
}
