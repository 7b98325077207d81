/** What of the gas that a case spills leaks, and what leaves by the exhaust: for the air of theatres, and for capture. */
import { spillOf } from '../case/absorbent-use.ts';
import { modelCase } from '../case/case-model.ts';
import type { CaseUse } from '../case/case-result.ts';
import { solvedOfNitrousOxide } from '../case/circle-report.ts';
import { givenOf } from '../case/conditions.ts';
import { liquidAtExhaust } from '../emissions/capture.ts';
import { leakShare, meanFreshGas, vapourOfLiquid } from '../theatre-air/escaping-gas.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { SourcesOfCases } from './case-sources.ts';
import type { CaseReckoning } from './scenario-cases.ts';

export interface LeakOfCase {
  /** Share of all gas that leaves the circuit, mean of the case, 0–100 %. */
  readonly leakPercent: Quantity;
  /** A liquid of the case's agent as vapour, L; null where it is given none. */
  readonly asVapour: ((liquidMl: Quantity) => Quantity) | null;
}

/** @param one a case with a breathing system: a regional one has none to leak */
export function leakOfCase(
  r: Reckoner,
  { sourcesOf }: SourcesOfCases,
  one: CaseReckoning<CaseUse>
): LeakOfCase {
  const { row, machine, result } = one;
  const minutes = r.cell(row.minutes, 'min', 'caseMix', row.id, 'minutes');
  const modelled = modelCase(r, givenOf(sourcesOf(one)));
  const { oxygenMlPerMin, agent: model, nitrousOxide } = modelled;
  const asVapour =
    model === null
      ? null
      : (liquidMl: Quantity) => r.apply(vapourOfLiquid, { liquidMl, vapourPerLiquid: model.vapourPerLiquid });
  const flowLPerMin = r.apply(meanFreshGas, {
    oxygenL: result.oxygenL,
    airL: result.airL,
    nitrousOxideL: result.nitrousOxideL,
    minutes
  });
  const spillLPerMin = spillOf(r, {
    flowLPerMin,
    oxygenMlPerMin,
    minutes,
    vapour:
      asVapour === null ? null : { vapourL: asVapour(result.liquidMl), takenUpL: asVapour(result.takenUpMl) },
    nitrousOxideTakenUpL:
      nitrousOxide === null
        ? null
        : solvedOfNitrousOxide(
            r,
            modelled,
            nitrousOxide
          )('nitrous-oxide-taken-up', nitrousOxide.outcome.takenUpL)
  });
  return {
    asVapour,
    leakPercent: r.apply(leakShare, {
      leakMlPerMin: r.cell(machine.leakMlPerMin, 'mL/min', 'machines', machine.id, 'leakMlPerMin'),
      spillLPerMin
    })
  };
}

/** Agent that leaves a case by the exhaust, mL liquid. */
export const atExhaustOf = (r: Reckoner, sources: SourcesOfCases, one: CaseReckoning<CaseUse>): Quantity => {
  const { liquidMl, takenUpMl, leftMl } = one.result;
  return r.apply(liquidAtExhaust, {
    liquidMl,
    takenUpMl,
    leftMl,
    leakPercent: leakOfCase(r, sources, one).leakPercent
  });
};
