/** How a figure of an uncertainty run came about: the method, its draws, and every cell that was varied, as leaves. */
import { isTwinId, scenarioOfTwin } from '../attribution/levers.ts';
import { explainer, NoSuchFigureError } from '../estimate/explain.ts';
import type { EstimateInput } from '../input.ts';
import { constantIdOf } from '../reference/ranged-constant.ts';
import type { Band, BandPoint } from '../uncertainty/bands.ts';
import type { Likelihood } from '../uncertainty/acceptability.ts';
import type { SpreadPart } from '../uncertainty/spread-parts.ts';
import { sharesOf, widthOf } from '../uncertainty/weights.ts';
import type { DrawnFigure, RunSummary, ScenarioSpread } from './draws.ts';
import { drawnFigures, drawnWriter, uncertainInputs } from './draws.ts';
import { numberAt } from './changed-cell.ts';
import { isModelError } from './model-spread.ts';
import { drawnSpillShares, spillSharePath } from './spill-spread.ts';
import { recorder, recorderOver, workingOf } from '../working/recorder.ts';
import type { MethodReport, Quantity } from '../working/reckoner.ts';
import type { Working } from '../working/working.ts';

/** A finished run and what the document says of its cells. */
export interface ExplainedRun {
  /** What was drawn from. */
  readonly input: EstimateInput;
  /** `explainer` of that input, made once for all figures of the run. */
  readonly explain: (path: string) => Working;
  readonly summary: RunSummary;
  /** Paths of cells that hold whole numbers. */
  readonly wholeCells: ReadonlySet<string>;
  /** Unit of the cell at a path; `1` for a pure number. */
  readonly unitOf: (path: string) => string;
  /** What a reader calls the cells at these paths, which vary together. */
  readonly nameOf: (paths: readonly string[]) => string;
  /** What a reader calls an option, by its id: a scenario or its twin. */
  readonly optionName: (id: string) => string;
}

/** Names and units of the drawn figures, and where they stand in an estimate. */
const figures: Readonly<Record<DrawnFigure, { yields: string; unit: string; path: string }>> = {
  yearlySaving: { yields: 'saving of a year', unit: 'currency', path: 'yearlySaving' },
  co2eAvoidedKg: { yields: 'emissions avoided in a year', unit: 'kg CO2e', path: 'co2eAvoidedKg' },
  npv: { yields: 'net present value', unit: 'currency', path: 'npv' },
  paybackYears: { yields: 'payback', unit: 'year', path: 'simplePaybackYears' }
};
const percentiles = { low: '5th', middle: '50th', high: '95th' } as const;

const sources =
  'Latin hypercube: McKay, Beckman, Conover, Technometrics 21 (1979), 239; percentiles: Hyndman, Fan, The American Statistician 50 (1996), 361, type 7; standard error of a percentile: Woodruff, Journal of the American Statistical Association 47 (1952), 635';

const sourceOfWorth =
  'Howard RA, IEEE Transactions on Systems Science and Cybernetics 2 (1966), 22 (from memory); one input at a time by bins of the draws (common practice)';

const shapes: Readonly<Record<EstimateInput['sampling']['shape'], string>> = {
  pert: 'a PERT distribution (a beta distribution from low to high, with the mean at (low + 4 × most likely + high) / 6)',
  triangular: 'a triangular distribution from low to high, highest at the most likely value'
};

/**
 * The working of a figure of a run.
 * @param path the scenario's id, then one of: `bands.FIGURE.low|middle|high`; `cumulative.low|middle|high.YEAR`;
 *   `acceptability.INDEX`; `withinLimit`; `spreadOf.model|cells.FIGURE`; `npvAboveZero`; `entered.FIGURE`;
 *   `enteredCumulative.YEAR`; `swings.INDEX.OUTCOME.FIGURE`; `weights.INDEX`;
 *   `withoutMachine` or `machineAdds`, and `npv.low|middle|high`, `withinLimit` or `npvAboveZero`. Or, of no one scenario:
 *   `worthOfKnowing.worthOfAll`; `worthOfKnowing.inputs.INDEX.worth|noise`.
 * @throws NoSuchFigureError where the run has no such figure.
 */
export function explainDrawn(run: ExplainedRun, path: string): Working {
  const [id = '', kind = '', ...rest] = path.split('.');
  // No id of a workbook has capitals.
  if (id === 'worthOfKnowing') return worthOf(run, [kind, ...rest]);
  const spread = run.summary.scenarios.find((scenario) => scenario.id === id);
  if (spread === undefined) throw new NoSuchFigureError(path, 'one of a scenario that was drawn');
  const [first = '', second = ''] = rest;
  switch (kind) {
    case 'bands': {
      const { yields, unit, path: entered } = figures[first as DrawnFigure];
      const edge = second as keyof typeof percentiles;
      const band: Band = spread.bands[first as DrawnFigure];
      const name = `${percentiles[edge]} percentile of the ${yields}`;
      return percentileOf(run, band[edge], { name, unit, entered: `${id}.againstBaseline.${entered}` });
    }
    case 'cumulative': {
      const value = spread.cumulative[first as keyof typeof percentiles][Number(second)] ?? NaN;
      return percentileOf(
        run,
        { value, standardError: null },
        {
          name: `${percentiles[first as keyof typeof percentiles]} percentile of the cumulative cash flow at the end of year ${second}`,
          unit: 'currency',
          entered: `${id}.againstBaseline.years.${second}.cumulative`
        }
      );
    }
    case 'acceptability':
      return likelihoodOf(run, spread, spread.acceptability[Number(first)]);
    case 'withinLimit':
      return likelihoodOf(run, spread, spread.withinLimit);
    case 'spreadOf':
      return shareOfSpread(run, spread, { part: first as SpreadPart, figure: second as DrawnFigure });
    case 'npvAboveZero':
      return likelihoodOfWorth(run, spread.npvAboveZero, `${id}.againstBaseline.npv`);
    case 'withoutMachine':
    case 'machineAdds':
      return ofOption(run, spread, { option: kind, first, second });
    case 'entered':
      return run.explain(`${id}.againstBaseline.${figures[first as DrawnFigure].path}`);
    case 'enteredCumulative':
      return run.explain(`${id}.againstBaseline.years.${first}.cumulative`);
    case 'swings':
      return swingOf(run, spread, { index: Number(first), outcome: Number(second), figure: rest[2] ?? '' });
    case 'weights':
      return weightOf(run, spread, Number(first));
    default:
      throw new NoSuchFigureError(
        path,
        `${id}. and one of bands, cumulative, acceptability, withoutMachine, machineAdds, swings, weights, entered`
      );
  }
}

function percentileOf(
  run: ExplainedRun,
  { value, standardError }: BandPoint,
  { name, unit, entered }: { name: string; unit: string; entered: string }
): Working {
  const report = [...drawsMade(run.summary)];
  if (standardError !== null)
    report.push({ words: 'standard error of this percentile', value: standardError, unit });
  return ofDraws(run, {
    value,
    entered,
    report: {
      id: 'uncertainty.percentile',
      yields: name,
      words: `The figures of all draws are put in order, and this one stands at that share of the way up, interpolated between its neighbours. A payback that no draw reaches counts as never and comes last. ${howDrawn(run)}`,
      unit,
      source: sources,
      report
    }
  });
}

/** How much of the spread of a figure the model makes, or the cells with ranges. */
function shareOfSpread(
  run: ExplainedRun,
  { id, spreadOf }: ScenarioSpread,
  { part, figure }: { part: SpreadPart; figure: DrawnFigure }
): Working {
  const whose =
    part === 'model' ? 'the model: its body model and its own error' : 'the cells that have a range';
  return ofDraws(run, {
    value: 100 * spreadOf[part][figure],
    entered: `${id}.againstBaseline.${figures[figure].path}`,
    report: {
      id: 'uncertainty.share-of-spread',
      yields: `Share of the variance of the ${figures[figure].yields} that comes from ${whose}`,
      words: `For each input by itself, the draws are put in order of it and cut into 20 bins of equal count; the variance of the means of the bins, over the variance of all draws, less what as many bins give by chance; added up over the inputs. What inputs make together only is in neither share. ${howDrawn(run)}`,
      unit: '%',
      source:
        'Sobol IM, Mathematics and Computers in Simulation 55 (2001), 271 (from memory); by bins of draws already made (common practice)',
      report: drawsMade(run.summary)
    }
  });
}

/** The twin of a scenario, or the step from there to the scenario: both sides are of the same draw. */
function ofOption(
  run: ExplainedRun,
  spread: ScenarioSpread,
  { option, first, second }: { option: 'withoutMachine' | 'machineAdds'; first: string; second: string }
): Working {
  const { id, [option]: of } = spread;
  if (of === null)
    throw new NoSuchFigureError(`${id}.${option}`, 'one of a scenario that changes the machine');
  const entered = `${id}.${option}`;
  if (first === 'withinLimit')
    return likelihoodOf(run, spread, of.withinLimit, `${entered}.simplePaybackYears`);
  if (first === 'npvAboveZero') return likelihoodOfWorth(run, of.npvAboveZero, `${entered}.npv`);
  const edge = second as keyof typeof percentiles;
  const whose = option === 'machineAdds' ? 'the step from the twin' : 'the twin on today’s machines';
  return percentileOf(run, of.npv[edge], {
    name: `${percentiles[edge]} percentile of the net present value of ${whose}`,
    unit: 'currency',
    entered: `${entered}.npv`
  });
}

/** What it would be worth to know all, or one input, before choosing. */
function worthOf(run: ExplainedRun, path: readonly string[]): Working {
  const { options, best, worthOfAll, inputs } = run.summary.worthOfKnowing;
  const entered = isTwinId(best)
    ? `${scenarioOfTwin(best)}.withoutMachine.npv`
    : `${best}.againstBaseline.npv`;
  const report = [
    ...drawsMade(run.summary),
    { words: 'options chosen among', value: options.length, unit: '1' }
  ];
  const [list, place, figure] = path;
  if (list === 'worthOfAll')
    return ofDraws(run, {
      value: worthOfAll,
      entered,
      report: {
        id: 'uncertainty.worth-of-all',
        yields: 'What it is worth to know everything before choosing',
        words: `The expected value of perfect information: the mean over the draws of the net present value of the option that is best in the draw, less the highest mean of one option, “${run.optionName(best)}”. It is 0 where one option is best in every draw. ${howDrawn(run)}`,
        unit: 'currency',
        source: sourceOfWorth,
        report
      }
    });
  const input = list === 'inputs' ? inputs[Number(place)] : undefined;
  if (input === undefined || (figure !== 'worth' && figure !== 'noise'))
    throw new NoSuchFigureError(
      `worthOfKnowing.${path.join('.')}`,
      'worthOfAll, or inputs. with a number and worth or noise'
    );
  const bins =
    'the draws are put in order of it and cut into 20 bins of equal count, or one bin for each possibility; the mean over the bins of the best option’s mean in the bin, less the highest mean of one option over all draws';
  return ofDraws(run, {
    value: input[figure],
    entered,
    report: {
      id: `uncertainty.${figure === 'worth' ? 'worth-of-input' : 'noise-of-input'}`,
      yields:
        figure === 'worth'
          ? `What it is worth to know “${run.nameOf(input.paths)}”`
          : `What chance alone would make of “${run.nameOf(input.paths)}”`,
      words:
        figure === 'worth'
          ? `The expected value of partial perfect information: ${bins}. ${howDrawn(run)}`
          : `The values are shuffled over the draws, so that they say nothing, and then the same is done: ${bins}. A worth that is not above this is not told apart from 0. ${howDrawn(run)}`,
      unit: 'currency',
      source: sourceOfWorth,
      report
    }
  });
}

function likelihoodOf(
  run: ExplainedRun,
  { id }: ScenarioSpread,
  likelihood: Likelihood | undefined,
  entered = `${id}.againstBaseline.simplePaybackYears`
): Working {
  if (likelihood === undefined) throw new NoSuchFigureError(id, 'a limit that was counted');
  const { limit } = likelihood;
  return shareOfDraws(run, likelihood, {
    entered,
    yields: `Share of the draws that have paid for themselves within ${limit} years`,
    words: `Draws with a simple payback of at most ${limit} years, over all draws.`
  });
}

const likelihoodOfWorth = (run: ExplainedRun, likelihood: Likelihood, entered: string): Working =>
  shareOfDraws(run, likelihood, {
    entered,
    yields: 'Share of the draws with a net present value above 0',
    words: 'Draws with a net present value above 0, over all draws.'
  });

function shareOfDraws(
  run: ExplainedRun,
  { probability, standardError }: Likelihood,
  { entered, yields, words }: { entered: string; yields: string; words: string }
): Working {
  return ofDraws(run, {
    value: 100 * probability,
    entered,
    report: {
      id: 'uncertainty.likelihood',
      yields,
      words: `${words} ${howDrawn(run)}`,
      unit: '%',
      source: sources,
      report: [
        ...drawsMade(run.summary),
        { words: 'standard error of this share, √(p (1 − p) / n)', value: 100 * standardError, unit: '%' }
      ]
    }
  });
}

const drawsMade = ({ draws, failed }: RunSummary): MethodReport['report'] => [
  { words: 'draws counted', value: draws - failed, unit: '1' },
  { words: 'draws left out, as they could not be computed', value: failed, unit: '1' }
];

const howDrawn = ({ input: { sampling } }: ExplainedRun): string =>
  `Each draw takes a value for every cell with a range at once, from ${shapes[sampling.shape]}, by Latin hypercube, so that every part of each range has its share, and does the whole estimate with it; all other cells are as entered. The same seed gives the same draws.`;

function ofDraws(
  run: ExplainedRun,
  { value, entered, report }: { value: number; entered: string; report: MethodReport }
): Working {
  const { input, unitOf } = run;
  const { sampling } = input;
  const setting = (key: keyof typeof sampling) => recorder.cell(sampling[key], '1', 'sampling', key);
  const inputs: Record<string, Quantity<unknown>> = {
    'the same figure as entered': run.explain(entered) as unknown as Quantity,
    'number of draws': setting('draws'),
    seed: setting('seed'),
    'shape of the ranges': setting('shape'),
    'minutes of all case groups together': setting('minutesTogether'),
    'over the body models': setting('overBodyModels'),
    'over the model’s error': setting('overModelError'),
    'over where gas is spilled': setting('overSpillShare')
  };
  let number = 0;
  for (const uncertain of uncertainInputs(input)) {
    const { path } = uncertain;
    number += 1;
    if (path === spillSharePath) {
      inputs['lowest share spilled as inspired gas, each of five drawn equally often'] = recorder.assumption(
        drawnSpillShares[0],
        '1',
        'The dead-space share: the relief valve sits on the expiratory side (Evidence). The highest is 1, as without draws.'
      );
      continue;
    }
    if ('choices' in uncertain) {
      inputs['most likely body model, each drawn equally often'] = recorder.cell(
        input.accounting.bodyModel,
        '1',
        path
      );
      continue;
    }
    if (isModelError(path)) {
      const words =
        'Around 1, so wide that it scatters as the model does against published measurements (Evidence).';
      const name = run.nameOf([path]);
      inputs[`${name}, lowest factor`] = recorder.assumption(uncertain.low, '1', words);
      inputs[`${name}, highest factor`] = recorder.assumption(uncertain.high, '1', words);
      continue;
    }
    const unit = unitOf(path);
    inputs[`range ${number}, low`] = recorder.cell(uncertain.low, unit, 'ranges', path, 'low');
    inputs[`range ${number}, most likely`] = modeOf(input, { path, mode: uncertain.mode, unit });
    inputs[`range ${number}, high`] = recorder.cell(uncertain.high, unit, 'ranges', path, 'high');
  }
  // “Never”, and what no draw gave, is no number.
  const shown = Number.isFinite(value) ? value : null;
  return workingOf(recorder.result(shown, inputs, () => report));
}

/** The most likely value of an input: its cell, or the published figure. */
function modeOf(
  { reference }: EstimateInput,
  { path, mode, unit }: { readonly path: string; readonly mode: number; readonly unit: string }
): Quantity {
  const published = reference.constants.get(constantIdOf(path) ?? '');
  return published === undefined ? recorder.cell(mode, unit, path) : recorder.constant(published);
}

/** One input at an end of its range, the rest as entered: the estimate itself, done once with that value. */
function swingOf(
  { input, wholeCells }: ExplainedRun,
  { id, swings }: ScenarioSpread,
  { index, outcome, figure }: { index: number; outcome: number; figure: string }
): Working {
  const swing = swings[index];
  const values = swing?.outcomes[outcome]?.values;
  if (swing === undefined || values === undefined || !drawnFigures.some((each) => each === figure))
    throw new NoSuchFigureError(`${id}.swings.${index}.${outcome}.${figure}`, 'a range that was looked at');
  const changed = swing.paths.reduce(
    (to, path, k) => drawnWriter(input, path, wholeCells)(to, values[k] ?? NaN),
    input
  );
  const ends = new Map(
    swing.paths
      .filter((path) => numberAt(input, path) !== null)
      .map((path) => [path, { path: `ranges.${path}.${outcome === 0 ? 'low' : 'high'}` }])
  );
  const r = recorderOver((path) => ends.get(path) ?? null);
  return explainer(changed, r)(`${id}.againstBaseline.${figures[figure as DrawnFigure].path}`);
}

/** Which part of all swings of the net present value is one input's. */
function weightOf(run: ExplainedRun, spread: ScenarioSpread, index: number): Working {
  const widths = spread.swings.map(({ outcomes }) =>
    widthOf(outcomes.flatMap(({ figures: at }) => at?.npv ?? []))
  );
  const [share, width] = [sharesOf(widths)[index], widths[index]];
  const swing = spread.swings[index];
  if (share === undefined || width === undefined || swing === undefined)
    throw new NoSuchFigureError(`${spread.id}.weights.${index}`, 'a range that was looked at');
  const ends = swing.outcomes.flatMap(({ figures: at }, outcome) =>
    at === null
      ? []
      : [
          [
            `net present value at ${swing.outcomes.length === 2 ? (outcome === 0 ? 'its low' : 'its high') : `possibility ${outcome + 1}`}`,
            swingOf(run, spread, { index, outcome, figure: 'npv' }) as unknown as Quantity
          ] as const
        ]
  );
  return workingOf(
    recorder.result(share * 100, Object.fromEntries(ends), () => ({
      id: 'uncertainty.weight',
      yields: 'weight in the answer',
      words: `How far the net present value swings as ${run.nameOf(swing.paths)} goes from one end of its range to the other, all else as entered, as a share of the swings of all ${widths.length} inputs with a range.`,
      unit: '%',
      source: 'definition',
      report: [
        { words: 'its swing', value: width, unit: 'currency' },
        { words: 'all swings together', value: widths.reduce((sum, each) => sum + each, 0), unit: 'currency' }
      ]
    }))
  );
}
