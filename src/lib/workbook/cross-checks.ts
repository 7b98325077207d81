/** What one part of a workbook demands of another: ids that resolve, one baseline, one open phase, ranges in order. */
import { findReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import { checkOverride } from '#lib/calc/reference/plausible-ranges.ts';
import { agents } from '#lib/calc/input.ts';
import { ownEntry } from '#lib/calc/own-entry.ts';
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
  theatreGroups(workbook, report, locale);
  scenarios(workbook, report);
  nitrousOxide(workbook, report, locale);
  techniques(workbook, report, locale);
  moves(workbook, report, locale);
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
    theatreGroups: workbook.theatreGroups.map((entry) => entry.id),
    monitorPrices: workbook.monitorPrices.map((entry) => entry.item)
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
      if (phase.vaporiser === 'dial' && phase.flowAsNeeded)
        report(
          `${at}.${index}.flowAsNeeded`,
          'Flow as needed: yes was given beside a fixed dial; allowed is no, as vapour is then injected to hold the target.'
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

function scenarios(workbook: Workbook, report: Report): void {
  const machineIds = new Set(workbook.machines.map((entry) => entry.id));
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
    if (scenario.baseline && Object.keys(scenario.plans).length === 0)
      report(
        `${at}.plans`,
        `Flow plan: “${scenario.name}” stands for today and names no plan on any machine; choose one on Scenarios.`
      );
    for (const [machineId, planId] of Object.entries(scenario.plans)) {
      if (!machineIds.has(machineId))
        report(`${at}.plans.${machineId}`, `“${machineId}” is not the id of a machine.`);
      if (!plans.has(planId))
        report(
          `${at}.plans.${machineId}`,
          `Flow plan: “${planId}” is not in the list; allowed is one of ${list(plans)}.`
        );
    }
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
  }
}

function theatreGroups(workbook: Workbook, report: Report, locale?: string): void {
  const written = (value: number): string => quotedNumber(value, locale);
  const machineById = new Map(workbook.machines.map((entry) => [entry.id, entry]));
  const groups = new Set(workbook.theatreGroups.map((entry) => entry.id));
  for (const {
    id,
    name,
    machine: machineId,
    machineAgeYears,
    theatres,
    monitors
  } of workbook.theatreGroups) {
    const at = `theatreGroups.${id}`;
    const machine = machineById.get(machineId);
    if (machine === undefined)
      report(
        `${at}.machine`,
        `Machine of today: “${machineId}” is not in the list; allowed is one of ${list(machineById.keys())}.`
      );
    if (machine !== undefined && machineAgeYears !== null && machineAgeYears > machine.lifeYears)
      report(
        `${at}.machineAgeYears`,
        `Age of the machines: ${written(machineAgeYears)} years was given; “${machine.name}” has a life of ${written(machine.lifeYears)}, and is at most that old.`
      );
    for (const [item, number] of Object.entries(monitors))
      if (number !== undefined && number > theatres)
        report(
          `${at}.monitors.${item}`,
          `Theatres that have it: ${written(number)} was given; “${name}” has ${written(theatres)}.`
        );
  }
  for (const { id, name, theatreGroups: shares } of workbook.caseMix) {
    const given = Object.entries(shares);
    if (given.length === 0) continue;
    for (const [group] of given)
      if (!groups.has(group))
        report(`caseMix.${id}.theatreGroups.${group}`, `“${group}” is not the id of a theatre group.`);
    const all = given.reduce((sum, [, percent]) => sum + percent, 0);
    const takeTheRest = [...groups].some((group) => ownEntry(shares, group) === undefined);
    if (all > 100 + 1e-9 || (all < 100 - 1e-9 && !takeTheRest))
      report(
        `caseMix.${id}.theatreGroups.${given.at(-1)?.[0]}`,
        `Share of the cases: the shares of “${name}” add up to ${written(all)} %; they have to make 100 %, or leave a group empty for the rest.`
      );
  }
}

function nitrousOxide(
  { scenarios: all, caseMix, accounting: { appraisalYears } }: Workbook,
  report: Report,
  locale?: string
): void {
  const given = caseMix.filter(({ nitrousOxidePercent }) => nitrousOxidePercent > 0);
  for (const { id, name, baseline, nitrousOxideSupply, nitrousOxideSupplyYear: year } of all) {
    if (nitrousOxideSupply === 'as-today') continue;
    const at = `scenarios.${id}`;
    if (baseline)
      report(
        `${at}.nitrousOxideSupply`,
        `Nitrous oxide: “${name}” stands for today, where the supply is as it is; only “As today” is allowed.`
      );
    else if (nitrousOxideSupply === 'none' && given.length > 0)
      report(
        `${at}.nitrousOxideSupply`,
        `Nitrous oxide: “None” was given, but ${given.length === 1 ? 'a case group is' : `${quotedNumber(given.length, locale)} case groups are`} given it, “${given[0]?.name}” first; take it out of them on Case mix, or choose cylinders.`
      );
    if (year >= appraisalYears)
      report(
        `${at}.nitrousOxideSupplyYear`,
        `Supply changes in year: ${quotedNumber(year, locale)} was given; with an appraisal of ${quotedNumber(appraisalYears, locale)} years, 0 to ${quotedNumber(appraisalYears - 1, locale)} is allowed.`
      );
  }
}

function techniques({ scenarios: all, caseMix }: Workbook, report: Report, locale?: string): void {
  const rows = new Map(caseMix.map((row) => [row.id, row]));
  for (const { id, name, baseline, intravenousPercentByCase, regionalPercentByCase } of all) {
    const changes = [
      { technique: 'intravenous', field: 'intravenousPercentByCase', shares: intravenousPercentByCase },
      { technique: 'regional', field: 'regionalPercentByCase', shares: regionalPercentByCase }
    ] as const;
    for (const { technique, field, shares } of changes)
      for (const [caseId, percent] of Object.entries(shares)) {
        const at = `scenarios.${id}.${field}.${caseId}`;
        const row = rows.get(caseId);
        if (row === undefined) report(at, `“${caseId}” is not the id of a case group.`);
        else if (baseline && percent > 0)
          report(
            at,
            `Technique: “${name}” stands for today, where each case group is done as Case mix says; enter a group for each technique there.`
          );
        else if (row.technique === technique && percent > 0)
          report(at, `Technique: “${row.name}” is ${technique} already; leave the cell empty.`);
        const both =
          (ownEntry(intravenousPercentByCase, caseId) ?? 0) + (ownEntry(regionalPercentByCase, caseId) ?? 0);
        if (both > 100 + 1e-9 && ownEntry(shares, caseId) === percent)
          report(
            at,
            `Technique: ${quotedNumber(both, locale)} % of “${row?.name ?? caseId}” would become intravenous or regional; together at most 100 % can.`
          );
      }
  }
}

function moves(workbook: Workbook, report: Report, locale?: string): void {
  const written = (value: number): string => quotedNumber(value, locale);
  const machineById = new Map(workbook.machines.map((entry) => [entry.id, entry]));
  const groupById = new Map(workbook.theatreGroups.map((entry) => [entry.id, entry]));
  const { appraisalYears } = workbook.accounting;
  for (const scenario of workbook.scenarios) {
    const at = `scenarios.${scenario.id}`;
    if (scenario.baseline && scenario.moves.length > 0)
      report(
        `${at}.moves`,
        `Machines that come: ${written(scenario.moves.length)} were given for “${scenario.name}”, which stands for today; nothing comes there.`
      );
    scenario.moves.forEach((move, index) => {
      const cell = `${at}.moves.${index}`;
      const machine = machineById.get(move.machine);
      if (machine === undefined)
        report(
          `${cell}.machine`,
          `Machine that comes: “${move.machine}” is not in the list; allowed is one of ${list(machineById.keys())}.`
        );
      else if (ownEntry(scenario.plans, move.machine) === undefined)
        report(
          `${at}.plans.${move.machine}`,
          `Flow plan: “${scenario.name}” brings “${machine.name}” and names no plan for it; choose one.`
        );
      if (!groupById.has(move.theatreGroup))
        report(
          `${cell}.theatreGroup`,
          `Theatre group: “${move.theatreGroup}” is not in the list; allowed is one of ${list(groupById.keys())}.`
        );
      if (move.year > appraisalYears - 1)
        report(
          `${cell}.year`,
          `Year: ${written(move.year)} was given; the appraisal is of ${written(appraisalYears)} years, so a machine comes in year 0 to ${written(appraisalYears - 1)}.`
        );
      const term = move.payment?.termYears;
      if (machine !== undefined && term !== undefined && term > machine.lifeYears)
        report(
          `${cell}.payment.termYears`,
          `Term: ${written(term)} years was given; “${machine.name}” has a life of ${written(machine.lifeYears)}, and is paid for no longer than that.`
        );
    });
    for (const group of workbook.theatreGroups) movesOfGroup(workbook, scenario, group, report, written);
  }
}

/** Whether the moves of a group fit into its theatres, year by year. */
function movesOfGroup(
  { accounting: { appraisalYears } }: Workbook,
  scenario: Workbook['scenarios'][number],
  { id, name, theatres }: Workbook['theatreGroups'][number],
  report: Report,
  written: (value: number) => string
): void {
  const inOrder = scenario.moves
    .map((move, index) => ({ ...move, index }))
    .filter(({ theatreGroup }) => theatreGroup === id)
    .sort((a, b) => a.year - b.year);
  const taken: { theatres: number; year: number; until: number; index: number }[] = [];
  for (const { theatres: asked, year, payment, index } of inOrder) {
    const until = payment?.atEnd === 'return' ? year + payment.termYears : Infinity;
    const before = taken.filter((each) => each.until > year).reduce((sum, each) => sum + each.theatres, 0);
    const left = theatres - before;
    const cell = `scenarios.${scenario.id}.moves.${index}.theatres`;
    if (left <= 0)
      report(
        cell,
        `Theatres: all ${written(theatres)} of “${name}” have moved by then, so none is left for this machine.`
      );
    else if (asked !== null && asked > left)
      report(
        cell,
        `Theatres: ${written(asked)} was given; “${name}” has ${written(theatres)}${before > 0 ? `, of which ${written(left)} are left` : ''}.`
      );
    taken.push({ theatres: Math.max(0, Math.min(asked ?? left, left)), year, until, index });
  }
  for (const { theatres: returned, until, index } of taken) {
    if (until >= appraisalYears) continue;
    const after = taken.filter(({ year }) => year === until).reduce((sum, each) => sum + each.theatres, 0);
    if (after < returned)
      report(
        `scenarios.${scenario.id}.moves.${index}.payment.atEnd`,
        `At the end of the term: the machines in “${name}” go back in year ${written(until)}, before the appraisal ends, and no other comes in that year; let one come, or buy or renew them.`
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
