/** How a figure of the circle-system solution says where it came from. */
import type { MethodReport, Quantity, Reckoner } from '../working/reckoner.ts';
import type { AgentModel, CaseModel } from './case-model.ts';
import { MIXING_TIME_MIN, STEP_TOLERANCE } from './circle-system.ts';
import type { CircleOutcome } from './circle-system.ts';
import type { NitrousOxideModel } from './nitrous-oxide.ts';

/** The figures that a run gives, and their units. */
const figures = {
  'vapour-delivered': ['Vapour delivered', 'L'],
  'vapour-taken-up': ['Vapour taken up', 'L'],
  'vapour-spilled': ['Vapour spilled', 'L'],
  'vapour-left': ['Vapour left in circuit and lung', 'L'],
  'vapour-delivered-in-phase': ['Vapour delivered in a phase', 'L'],
  'vapour-taken-up-in-phase': ['Vapour taken up in a phase', 'L'],
  'vapour-floor': ['Vapour used if nothing spilled', 'L'],
  'minutes-to-target': ['Time until 95 % of the end-tidal target is first reached', 'min'],
  'minutes-below-target': ['Time below 95 % of the end-tidal target after it was reached', 'min'],
  'end-tidal-minutes': ['End-tidal fraction summed over time', 'min'],
  'fresh-gas-in-phase': ['Fresh gas given in a phase in which the flow follows the need', 'L'],
  'nitrous-oxide-in-phase': ['Nitrous oxide given in a phase in which the flow follows the need', 'L'],
  'nitrous-oxide-taken-up-in-phase': ['Nitrous oxide taken up in a phase', 'L'],
  'nitrous-oxide-taken-up': ['Nitrous oxide taken up', 'L']
} as const;
export type CircleFigure = keyof typeof figures;

const method =
  'Circuit, lung and tissues are balanced as well-mixed compartments from the first minute to the last, by an implicit method of order 4 whose steps grow as the fast compartments settle and end where the vaporiser meets a limit or gas begins or ceases to spill.';
const floorMethod =
  'The same balance for a circuit that spills nothing, with a vaporiser that no limit binds, holding the target from the first minute to the last: what is taken up at that target, and what circuit and lung hold at the end.';

export function circleReport(figure: CircleFigure, outcome: CircleOutcome): MethodReport {
  const [yields, unit] = figures[figure];
  return {
    id: `case.${figure}`,
    yields,
    words: figure === 'vapour-floor' ? floorMethod : method,
    unit,
    source:
      'compartment model after Eger EI, Anesthetic Uptake and Action, 1974, in a circuit with spill; solved after Hairer & Wanner, Solving Ordinary Differential Equations II, section IV.7',
    report: [
      {
        words: 'assumed: the vaporiser brings the circuit to what holds the target with this time constant',
        value: MIXING_TIME_MIN,
        unit: 'min'
      },
      { words: 'error allowed per step, as a share of the target', value: STEP_TOLERANCE, unit: '1' },
      { words: 'steps', value: outcome.steps, unit: '1' },
      { words: 'steps taken again with a shorter length', value: outcome.rejected, unit: '1' },
      { words: 'switch points located', value: outcome.switches, unit: '1' },
      {
        words: 'delivered less taken up, spilled and left',
        value: outcome.balanceErrorL,
        unit: 'L'
      }
    ]
  };
}

/** All that goes into a run, named for a reader; nitrous oxide, where it is followed, as what the agent's run is given. */
export function circleInputs(model: CaseModel, agent: AgentModel): Record<string, Quantity<unknown>> {
  return {
    'end-tidal target': agent.targetFraction,
    ...gasInputs(agent),
    'cardiac output': agent.cardiacOutputLPerMin,
    'oxygen consumption': model.oxygenMlPerMin,
    ...(model.nitrousOxide === null ? {} : prefixed('nitrous oxide: ', nitrousOxideGas(model.nitrousOxide))),
    ...phaseInputs(model)
  };
}

/** Wraps a figure of the run of nitrous oxide. */
export function solvedOfNitrousOxide(r: Reckoner, model: CaseModel, nitrousOxide: NitrousOxideModel) {
  const inputs = r.records ? nitrousOxideInputs(model, nitrousOxide) : {};
  return (figure: CircleFigure, value: number): Quantity =>
    r.result(value, inputs, () => circleReport(figure, nitrousOxide.outcome));
}

/** All that goes into the run of nitrous oxide, named for a reader. */
function nitrousOxideInputs(
  model: CaseModel,
  nitrousOxide: NitrousOxideModel
): Record<string, Quantity<unknown>> {
  return {
    ...nitrousOxideGas(nitrousOxide),
    'cardiac output': nitrousOxide.cardiacOutputLPerMin,
    'oxygen consumption': model.oxygenMlPerMin,
    ...phaseInputs(model)
  };
}

const nitrousOxideGas = (nitrousOxide: NitrousOxideModel): Record<string, Quantity<unknown>> => ({
  'share to be held': nitrousOxide.heldPercent,
  'share of what is taken up in whose place more is inspired': nitrousOxide.drawnInPercent,
  ...gasInputs(nitrousOxide)
});

const prefixed = (
  prefix: string,
  inputs: Record<string, Quantity<unknown>>
): Record<string, Quantity<unknown>> =>
  Object.fromEntries(Object.entries(inputs).map(([name, input]) => [prefix + name, input]));

/** What a gas is dissolved and held by. */
function gasInputs({
  bloodGas,
  lungVolumeL,
  circuitVolumeL,
  spillShareInspired,
  tissues
}: Pick<
  AgentModel,
  'bloodGas' | 'lungVolumeL' | 'circuitVolumeL' | 'spillShareInspired' | 'tissues'
>): Record<string, Quantity<unknown>> {
  const inputs: Record<string, Quantity<unknown>> = {
    'blood/gas partition coefficient': bloodGas,
    'effective lung volume': lungVolumeL,
    'circuit volume': circuitVolumeL,
    'share of the spilled gas that leaves as inspired gas': spillShareInspired
  };
  tissues.forEach(({ volumeL, sharePercent, tissueBlood }, i) => {
    inputs[`tissue ${i + 1}: volume`] = volumeL;
    inputs[`tissue ${i + 1}: share of cardiac output`] = sharePercent;
    inputs[`tissue ${i + 1}: tissue/blood partition coefficient`] = tissueBlood;
  });
  return inputs;
}

/** The phases as they are run. */
function phaseInputs(model: CaseModel): Record<string, Quantity<unknown>> {
  const inputs: Record<string, Quantity<unknown>> = {};
  for (const { name, index, minutes, flowLPerMin, asNeeded, breathing, dialPercent } of model.phases) {
    const phase = `phase ${index + 1}, ${name}`;
    inputs[`${phase}: minutes`] = minutes;
    if (asNeeded === null) inputs[`${phase}: fresh gas flow`] = flowLPerMin;
    else {
      inputs[`${phase}: least flow where it follows the need`] = asNeeded.leastLPerMin;
      inputs[`${phase}: gas lost`] = asNeeded.lostLPerMin;
    }
    breathing.forEach(({ minutes: ofPiece, ventilationLPerMin, change }, i) => {
      const piece = breathing.length === 1 ? phase : `${phase}, part ${i + 1}`;
      if (breathing.length > 1) inputs[`${piece}: minutes`] = ofPiece;
      if (change === null) inputs[`${piece}: alveolar ventilation`] = ventilationLPerMin;
      else {
        inputs[`${piece}: alveolar ventilation at its beginning`] = change.fromLPerMin;
        inputs[`${piece}: alveolar ventilation at its end`] = change.untilLPerMin;
      }
    });
    if (dialPercent !== null) inputs[`${phase}: dial`] = dialPercent;
  }
  return inputs;
}
