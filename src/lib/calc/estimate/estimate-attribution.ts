/** The estimate's figures of levers, twins and alternatives, plain and ready for JSON. */
import type { Rung } from '../attribution/ladder.ts';
import type { MoneyRow } from '../attribution/money-increments.ts';
import type { Part } from '../attribution/parts.ts';
import type { Step } from '../attribution/step.ts';
import type { TonnesRow } from '../attribution/tonnes-increments.ts';
import type {
  LadderStep,
  LeverPart,
  MoneyIncrement,
  StepFigures,
  TonnesIncrement
} from '../estimate-types.ts';
import type { Decimal } from '../money/decimal.ts';
import { text } from '../money/decimal.ts';
import { plain } from '../working/plain.ts';
import type { Quantity } from '../working/reckoner.ts';

const money = (quantity: Quantity<Decimal>): string => text(plain.value(quantity));

export const leverPart = ({ lever, yearlySaving, co2eAvoidedKg, npv }: Part): LeverPart => ({
  lever,
  yearlySaving: money(yearlySaving),
  co2eAvoidedKg: plain.value(co2eAvoidedKg),
  npv: money(npv)
});

export const ladderStep = ({ lever, step }: Rung): LadderStep => ({
  lever,
  yearlySaving: money(step.yearlySaving),
  co2eAvoidedKg: plain.value(step.co2eAvoidedKg),
  npv: money(step.npv),
  investment: money(step.investment)
});

export const stepFigures = (step: Step): StepFigures => ({
  yearlySaving: money(step.yearlySaving),
  co2eAvoidedKg: plain.value(step.co2eAvoidedKg),
  investment: money(step.investment),
  npv: money(step.npv),
  simplePaybackYears: plain.value(step.simplePaybackYears),
  discountedPaybackYears: plain.value(step.discountedPaybackYears),
  irrPercent: plain.value(step.irrPercent)
});

export function moneyIncrement({ id, sameAs, presentValueOfOutlay, step }: MoneyRow): MoneyIncrement {
  const figures = step?.figures;
  return {
    option: id,
    sameAs: [...sameAs],
    status: step === null ? 'today' : step.isTaken ? 'taken' : 'not-taken',
    against: step?.against ?? null,
    presentValueOfOutlay: money(presentValueOfOutlay),
    extraInvestment: figures === undefined ? '0' : money(figures.investment),
    extraYearlySaving: figures === undefined ? '0' : money(figures.yearlySaving),
    npv: figures === undefined ? '0' : money(figures.npv),
    simplePaybackYears: figures === undefined ? null : plain.value(figures.simplePaybackYears),
    irrPercent: figures === undefined ? null : plain.value(figures.irrPercent),
    npvIsEnough: step?.npvIsEnough ?? null,
    paybackIsWithinLimit: step?.paybackIsWithinLimit ?? null
  };
}

export const tonnesIncrement = ({
  id,
  sameAs,
  status,
  beatenBy,
  step,
  ...row
}: TonnesRow): TonnesIncrement => ({
  option: id,
  sameAs: [...sameAs],
  status,
  against: step?.against ?? null,
  beatenBy: [...beatenBy],
  netPresentCost: money(row.netPresentCost),
  tonnes: plain.value(row.tonnes),
  extraCost: step === null ? '0' : money(step.extraCost),
  extraTonnes: step === null ? 0 : plain.value(step.extraTonnes),
  costPerTonne: step === null || step.costPerTonne === null ? null : money(step.costPerTonne)
});
