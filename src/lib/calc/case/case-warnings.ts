/** What a reader must know about a case, in sentences. */
import { REACHED_SHARE } from './circle-system.ts';
import type { CircleOutcome, CirclePhase } from './circle-system.ts';
import type { CaseModel } from './case-model.ts';
import type { NitrousOxideModel } from './nitrous-oxide.ts';
import { groupsNotHeld } from './chosen-groups.ts';
import type { CaseGiven } from './conditions.ts';
import type { CaseWarning, PhaseAsRun } from './case-result.ts';
import { sevofluraneCaution } from './sevoflurane-caution.ts';
import { childOxygenUptake, oxygenUptake } from './physiology.ts';

/** Three significant figures, without an exponent. */
function said(value: number): string {
  if (value === 0) return '0';
  const scale = 10 ** (2 - Math.floor(Math.log10(Math.abs(value))));
  return String(scale >= 1 ? Math.round(value * scale) / scale : Math.round(value));
}
const percent = (fraction: number): string => `${said(100 * fraction)} %`;
const minutes = (value: number): string => `${said(value)} min`;

const namesOf = (phases: readonly { readonly name: string }[]): string =>
  phases.map((phase) => `“${phase.name}”`).join(', ');

/** Warnings that follow from the plan and what patient and machine need. */
export function planWarnings(
  { conditions }: CaseGiven,
  model: CaseModel,
  phases: readonly PhaseAsRun[],
  need: { readonly neededFlowLPerMin: number; readonly oxygenMlPerMin: number }
): CaseWarning[] {
  const warnings: CaseWarning[] = [];
  const add = (code: CaseWarning['code'], sentence: string) => warnings.push({ code, sentence });
  if (model.isCut) {
    const planned = conditions.phases.reduce((sum, phase) => sum + (phase.minutes ?? 0), 0);
    add(
      'case-shorter-than-plan',
      `The case lasts ${minutes(conditions.minutes)}, the plan’s phases that have minutes of their own last ${minutes(planned)}: it was cut from its end.`
    );
  }
  const refused = model.phases.filter(({ isAsNeededRefused }) => isAsNeededRefused);
  if (refused.length > 0)
    add(
      'flow-as-needed-refused',
      `${namesOf(refused)}: flow as needed is planned, which this machine cannot give; computed at the flow that stands beside it.`
    );
  const raised = phases.filter((phase) => phase.flowLPerMin > phase.plannedFlowLPerMin);
  if (raised.length > 0)
    add(
      'flow-raised-to-need',
      `${raised.map(({ name, plannedFlowLPerMin }) => `“${name}” at ${said(plannedFlowLPerMin)} L/min`).join(', ')}: less than the ${said(need.neededFlowLPerMin)} L/min that patient, leak and gas sample need or the machine gives; computed at that flow.`
    );
  const starved = raised.filter((phase) => phase.plannedFlowLPerMin * 1000 < need.oxygenMlPerMin);
  if (starved.length > 0)
    add(
      'oxygen-not-held',
      `${namesOf(starved)}: at the planned flow even pure oxygen is less than the ${said(need.oxygenMlPerMin)} mL/min that the patient consumes, and ${said(conditions.inspiredOxygenPercent)} % inspired oxygen cannot be held.`
    );
  return warnings;
}

/** Below 25 kg the lines for children are used, and they do not meet the adult formula. */
export function childWarning(given: CaseGiven, model: CaseModel): CaseWarning {
  const { constants } = model;
  const oxygen = (weightKg: number) => ({
    child: childOxygenUptake.compute({
      slope: constants.childOxygenSlope.value,
      weightKg,
      intercept: constants.childOxygenIntercept.value
    }),
    adult: oxygenUptake.compute({
      coefficient: constants.oxygenUptake.value,
      weightKg,
      exponent: constants.sizeExponent.value
    })
  });
  const { weightKg } = given.conditions;
  const limitKg = constants.childWeightLimit.value;
  const here = oxygen(weightKg);
  const atLimit = oxygen(limitKg);
  return {
    code: 'child-formula',
    sentence: `Below ${said(limitKg)} kg, oxygen consumption and CO2 production follow lines measured in children (3.6 to 25 kg): ${said(here.child)} mL/min oxygen, where the adult formula gives ${said(here.adult)}. ${
      constants.adultWeightLimit === null
        ? `At ${said(limitKg)} kg the two differ, ${said(atLimit.child)} against ${said(atLimit.adult)} mL/min, and the result steps.`
        : `From ${said(limitKg)} to ${said(constants.adultWeightLimit.value)} kg a bridge leads from the one to the other.`
    }`
  };
}

/** Minutes for which less gas comes in than is taken up are told from this many on. */
const SHORT_MIN = 0.5;

/** What a reader must know where nitrous oxide is followed. */
export function nitrousOxideWarnings({ minutesShort }: NitrousOxideModel): CaseWarning[] {
  if (minutesShort < SHORT_MIN) return [];
  return [
    {
      code: 'nitrous-oxide-short',
      sentence: `For ${minutes(minutesShort)} the patient takes up more oxygen and nitrous oxide than the fresh gas brings: the bag would empty, and the flow has to be higher meanwhile. It is computed at the flow of the plan, without what spills.`
    }
  ];
}

/** The MAC of children is constant to about this age, and what nitrous oxide spares was measured in the youngest. */
const CHILD_BELOW_YEARS = 12;

/** Warnings that follow from what became of the vapour. */
export function agentWarnings(
  given: CaseGiven,
  model: CaseModel,
  outcome: CircleOutcome,
  macFraction: number
): CaseWarning[] {
  const { agent } = model;
  if (agent === null) return [];
  const warnings: CaseWarning[] = [];
  const add = (code: CaseWarning['code'], sentence: string) => warnings.push({ code, sentence });
  const { targetFraction, phases: circlePhases } = agent.circle;
  const refused = model.phases.filter((phase) => phase.refusedDialPercent !== null);
  if (refused.length > 0)
    add(
      'dial-above-maximum',
      `${refused.map(({ name, refusedDialPercent }) => `“${name}” at ${said(refusedDialPercent ?? 0)} %`).join(', ')}: above the vaporiser’s maximum of ${said(agent.vaporiserMaximumPercent)} % for ${agent.agent}; computed at the maximum.`
    );
  for (const sentence of groupsNotHeld(given, model.constants, agent.agent))
    add('chosen-group-not-held', sentence);
  const { ageYears, nitrousOxidePercent } = given.conditions;
  if (nitrousOxidePercent > 0 && ageYears < CHILD_BELOW_YEARS)
    add(
      'child-nitrous-oxide',
      `Nitrous oxide is counted as in adults. In children of 1 to 3 years 60 % of it spared a fifth of the MAC of sevoflurane, where adding the two up spares nearly half (The pharmacology of sevoflurane in infants and children, read as an abstract): the estimate of ${agent.agent} is likely low.`
    );
  if (targetFraction === 0)
    add(
      'nitrous-oxide-target',
      `${said(given.conditions.nitrousOxidePercent)} % nitrous oxide alone comes to the target of ${said(given.conditions.targetMac ?? 0)} MAC: no ${agent.agent} is given to hold it.`
    );
  if (Number.isNaN(outcome.minutesToTarget)) {
    const limits = circlePhases
      .filter(({ vaporiser }) => vaporiser === 'hold')
      .map(({ dialFraction }) => dialFraction);
    if (limits.length > 0 && limits.every((limit) => limit <= targetFraction))
      add(
        'target-above-vaporiser',
        `The target of ${percent(targetFraction)} ${agent.agent} is not below the highest setting allowed, ${percent(Math.max(...limits))}: it cannot be reached.`
      );
    else
      add(
        'target-not-reached',
        `The target of ${percent(targetFraction)} ${agent.agent} was not reached in ${minutes(given.conditions.minutes)}: the end-tidal share stayed below ${percent(REACHED_SHARE * targetFraction)}.`
      );
  }
  const sagged = outcome.minutesBelowTarget - outcome.minutesBelowWhileOff;
  if (sagged >= SAG_MIN)
    add(
      'target-sagged',
      `After the target was reached, the end-tidal share fell below ${percent(REACHED_SHARE)} of it for ${minutes(sagged)} with the vaporiser on: the flow is too low for the setting allowed.`
    );
  if (agent.agent === 'sevoflurane') warnings.push(...labelWarnings(macFraction, circlePhases, outcome));
  return warnings;
}

/** A sag shorter than this is not told, min. */
const SAG_MIN = 0.1;

function labelWarnings(
  macFraction: number,
  phases: readonly CirclePhase[],
  outcome: CircleOutcome
): CaseWarning[] {
  let low = 0;
  let veryLow = 0;
  for (let i = 0; i < phases.length; i++) {
    const before = i === 0 ? 0 : outcome.endTidalByPhaseMin[i - 1]!;
    const macHours = (outcome.endTidalByPhaseMin[i]! - before) / macFraction / 60;
    const { flowLPerMin } = phases[i]!;
    if (flowLPerMin < 1) veryLow += macHours;
    else if (flowLPerMin < 2) low += macHours;
  }
  const parts: string[] = [];
  const isBelow = sevofluraneCaution({ flowLPerMin: 0.5, macHours: veryLow }) === 'not-recommended';
  if (isBelow) parts.push(`${said(veryLow)} MAC-hours below 1 L/min, which it does not recommend`);
  if (sevofluraneCaution({ flowLPerMin: 1.5, macHours: low }) === 'exceeds')
    parts.push(`${said(low)} MAC-hours at 1 to below 2 L/min, where it allows 2`);
  if (parts.length === 0) return [];
  return [
    {
      code: isBelow ? 'sevoflurane-below-1-l-per-min' : 'sevoflurane-above-2-mac-hours',
      sentence: `The US prescribing information of sevoflurane: this case has ${parts.join(', and ')}. Newer statements contest this for absorbents without strong base; the label in force and local policy decide.`
    }
  ];
}
