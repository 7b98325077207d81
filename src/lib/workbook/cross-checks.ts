/** What one part of a workbook demands of another: ids that resolve, one baseline, one open phase, ranges in order. */
import { findReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import { checkOverride } from '#lib/calc/reference/plausible-ranges.ts';
import { agents } from '#lib/calc/input.ts';
import { quotedNumber } from '#lib/numbers/quoted-number.ts';
import { quoted } from './field.ts';
import { rangeFault } from './range-fault.ts';
import { horizonsOf } from './warming-pairs.ts';
import type { Issue, Workbook } from './workbook.ts';

type Report = (path: string, sentence: string) => void;

/**
 * Every issue that a workbook of sound shape still has.
 * @param locale as for `refuse`
 */
export function crossChecks(workbook: Workbook, locale?: string): readonly Issue[] {
  const issues: Issue[] = [];
  const report: Report = (path, sentence) => issues.push({ path, sentence });
  uniqueIds(workbook, report);
  caseRows(workbook, report, locale);
  flowPlans(workbook, report);
  machines(workbook, report);
  scenarios(workbook, report, locale);
  accounting(workbook, report);
  ranges(workbook, report, locale);
  currency(workbook, report);
  overrides(workbook, report);
  return issues;
}

const list = (ids: Iterable<string>): string => [...ids].join(', ') || 'none yet';

function uniqueIds(workbook: Workbook, report: Report): void {
  const keyed = {
    agents: workbook.agents.map((entry) => entry.agent),
    absorbents: workbook.absorbents.map((entry) => entry.id),
    caseMix: workbook.caseMix.map((entry) => entry.id),
    flowPlans: workbook.flowPlans.map((entry) => entry.id),
    machines: workbook.machines.map((entry) => entry.id),
    scenarios: workbook.scenarios.map((entry) => entry.id),
    monitors: workbook.monitors.map((entry) => entry.item)
  };
  for (const [name, keys] of Object.entries(keyed)) {
    const seen = new Set<string>();
    for (const key of keys) {
      if (seen.has(key))
        report(`${name}.${key}`, `The id “${key}” stands more than once; each entry needs its own.`);
      seen.add(key);
    }
  }
}

function caseRows(workbook: Workbook, report: Report, locale?: string): void {
  const written = (value: number): string => quotedNumber(value, locale);
  const supplied = new Set(workbook.agents.map((entry) => entry.agent));
  for (const row of workbook.caseMix) {
    const at = `caseMix.${row.id}`;
    if (row.technique !== 'volatile') continue;
    if (row.agent === null)
      report(`${at}.agent`, `Agent: none was given; a volatile anaesthetic needs one of ${list(supplied)}.`);
    else if (!supplied.has(row.agent))
      report(
        `${at}.agent`,
        `Agent: “${row.agent}” has no entry among the agents on Prices; allowed is one of ${list(supplied)}.`
      );
    if (row.targetMac === null)
      report(
        `${at}.targetMac`,
        'Target: none was given; a volatile anaesthetic needs a number above 0 to 3 MAC.'
      );
    if (row.ageYears < 1)
      report(
        `${at}.ageYears`,
        `Age: ${written(row.ageYears)} was given; the published MAC formula holds from 1 year, so a volatile case needs 1 to 120 years.`
      );
    if (row.inspiredOxygenPercent + row.nitrousOxidePercent > 100)
      report(
        `${at}.nitrousOxidePercent`,
        `Nitrous oxide: ${written(row.nitrousOxidePercent)} % with ${written(row.inspiredOxygenPercent)} % oxygen was given; together they are at most 100 %.`
      );
  }
}

function flowPlans(workbook: Workbook, report: Report): void {
  for (const plan of workbook.flowPlans) {
    const at = `flowPlans.${plan.id}.phases`;
    const open = plan.phases.filter((phase) => phase.minutes === null).length;
    if (open !== 1)
      report(
        open === 0 ? at : `${at}.${plan.phases.findLastIndex((phase) => phase.minutes === null)}.minutes`,
        `${open} phases of “${plan.name}” have no minutes; exactly one lasts for the rest of the case.`
      );
    plan.phases.forEach((phase, index) => {
      if (phase.vaporiser === 'dial' && phase.dialPercent === null)
        report(
          `${at}.${index}.dialPercent`,
          'Dial: none was given; a fixed dial needs a number above 0 to below 100 %.'
        );
    });
  }
}

function machines(workbook: Workbook, report: Report): void {
  const absorbents = new Set(workbook.absorbents.map((entry) => entry.id));
  for (const machine of workbook.machines)
    if (!absorbents.has(machine.absorbent))
      report(
        `machines.${machine.id}.absorbent`,
        `Absorbent: “${machine.absorbent}” is not in the list; allowed is one of ${list(absorbents)}.`
      );
}

function scenarios(workbook: Workbook, report: Report, locale?: string): void {
  const written = (value: number): string => quotedNumber(value, locale);
  const machineById = new Map(workbook.machines.map((entry) => [entry.id, entry]));
  const plans = new Set(workbook.flowPlans.map((entry) => entry.id));
  const cases = new Set(workbook.caseMix.map((entry) => entry.id));
  const supplied = new Set<string>(workbook.agents.map((entry) => entry.agent));
  const baselines = workbook.scenarios.filter((scenario) => scenario.baseline);
  if (baselines.length !== 1)
    report(
      baselines.length === 0 ? 'scenarios' : `scenarios.${baselines[1]?.id}.baseline`,
      `${baselines.length} scenarios are marked as the baseline; exactly one stands for today.`
    );
  for (const scenario of workbook.scenarios) {
    const at = `scenarios.${scenario.id}`;
    const machine = machineById.get(scenario.machine);
    if (machine === undefined)
      report(
        `${at}.machine`,
        `Machine: “${scenario.machine}” is not in the list; allowed is one of ${list(machineById.keys())}.`
      );
    if (!plans.has(scenario.flowPlan))
      report(
        `${at}.flowPlan`,
        `Flow plan: “${scenario.flowPlan}” is not in the list; allowed is one of ${list(plans)}.`
      );
    for (const [caseId, planId] of Object.entries(scenario.flowPlanByCase)) {
      if (!cases.has(caseId))
        report(`${at}.flowPlanByCase.${caseId}`, `“${caseId}” is not the id of a case group.`);
      if (!plans.has(planId))
        report(
          `${at}.flowPlanByCase.${caseId}`,
          `Flow plan: “${planId}” is not in the list; allowed is one of ${list(plans)}.`
        );
    }
    for (const [from, to] of Object.entries(scenario.agentSwitch)) {
      for (const agent of [from, to])
        if (!(agents as readonly string[]).includes(agent))
          report(
            `${at}.agentSwitch.${from}`,
            `Agent: ${quoted(agent)} was given; allowed is one of ${list(agents)}.`
          );
      if (!supplied.has(to))
        report(
          `${at}.agentSwitch.${from}`,
          `Agent: “${to}” has no entry among the agents on Prices; allowed is one of ${list(supplied)}.`
        );
    }
    const bought = scenario.unitsByYear?.reduce((sum, units) => sum + units, 0);
    if (bought !== undefined && machine !== undefined && bought !== machine.units)
      report(
        `${at}.unitsByYear`,
        `Units by year: ${written(bought)} in all were given; “${machine.name}” has ${written(machine.units)} units, and the years must add up to that.`
      );
  }
}

function accounting(workbook: Workbook, report: Report): void {
  const { warmingSet, warmingHorizonYears, customWarming } = workbook.accounting;
  const set = findReferenceSet(workbook.referenceSet);
  if (
    set !== null &&
    warmingSet !== 'custom' &&
    !set.constants.has(`warming.${warmingSet}.${warmingHorizonYears}.sevoflurane`)
  ) {
    const held = horizonsOf(set, warmingSet);
    report(
      'accounting.warmingHorizonYears',
      held.length === 0
        ? `Warming potentials: ${warmingSet} was given; reference set ${set.id} does not hold it.`
        : `Horizon: ${warmingHorizonYears} years was given; reference set ${set.id} holds ${warmingSet} for ${held.join(', ')} years, and AR6 for 20, 100 and 500.`
    );
  }
  if (set !== null && warmingSet !== 'custom') {
    const lacks = (agent: string): boolean =>
      !set.constants.has(`warming.${warmingSet}.${warmingHorizonYears}.${agent}`);
    const sentence = (agent: string): string =>
      `Agent: ${agent} was given, for which ${warmingSet} has no warming potential over ${warmingHorizonYears} years; choose AR6 on Comparison, or a set of your own.`;
    for (const { id, technique, agent } of workbook.caseMix)
      if (technique === 'volatile' && agent !== null && lacks(agent))
        report(`caseMix.${id}.agent`, sentence(agent));
    for (const { id, agentSwitch } of workbook.scenarios)
      for (const [from, to] of Object.entries(agentSwitch))
        if (to !== undefined && lacks(to)) report(`scenarios.${id}.agentSwitch.${from}`, sentence(to));
  }
  if (warmingSet === 'custom')
    for (const { agent } of workbook.agents)
      if (customWarming[agent] === undefined)
        report(
          `accounting.customWarming.${agent}`,
          `Warming potential of ${agent}: none was given; a set of your own needs one for each agent on Prices.`
        );
}

function currency(workbook: Workbook, report: Report): void {
  if (!/^[A-Z]{3}$/.test(workbook.currency))
    report(
      'currency',
      `Currency: ${quoted(workbook.currency)} was given; allowed is a code of three capital letters, such as EUR.`
    );
}

function ranges(workbook: Workbook, report: Report, locale?: string): void {
  for (const [path, range] of Object.entries(workbook.ranges)) {
    const sentence = rangeFault(workbook, path, range, locale);
    if (sentence !== null) report(`ranges.${path}`, sentence);
  }
}

function overrides(workbook: Workbook, report: Report): void {
  const set = findReferenceSet(workbook.referenceSet);
  if (set === null) return;
  for (const override of workbook.overrides) {
    const sentence = checkOverride(set, override);
    if (sentence !== null) report(`overrides.${override.constant}`, sentence);
  }
}
