/**
 * Net present value, internal rate, payment and annuity against two general-purpose finance libraries, on 1 000 random
 * flows each. A spreadsheet's NPV counts its first flow at time 1, the other library's at time 0. Irregularly dated flows
 * are left out by design: every flow of this tool falls on a year end.
 */
import fc from 'fast-check';
import * as financial from 'financial';
import { IRR, NPV, PMT, PV } from '@formulajs/formulajs';
import { describe, expect, test } from 'vitest';
import { annuity, annuityFactor } from '#lib/calc/money/annuity.ts';
import { Decimal } from '#lib/calc/money/decimal.ts';
import type { CostOfService } from '#lib/calc/money/equal-service.ts';
import { compareOverEqualService } from '#lib/calc/money/equal-service.ts';
import { internalRates } from '#lib/calc/money/internal-rate.ts';
import { netPresentValue } from '#lib/calc/money/net-present-value.ts';
import { flowsOfPlan, paymentPlan } from '#lib/calc/money/payments.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { sumsOf } from '../unit/calc/money/business-case.ts';

const runs = { numRuns: 1000 };
const cents = (low: number, high: number) =>
  fc.integer({ min: low * 100, max: high * 100 }).map((n) => n / 100);
const ratePercents = fc.integer({ min: -2000, max: 5000 }).map((n) => n / 100);
const flowsOfAnySign = fc.array(cents(-100_000, 100_000), { minLength: 2, maxLength: 40 });
/** Money out first, then money in: exactly one rate of return. */
const investments = fc
  .tuple(cents(100, 100_000), fc.array(cents(0, 50_000), { minLength: 1, maxLength: 30 }))
  .filter(([, inflows]) => inflows.some((flow) => flow > 0))
  .map(([out, inflows]) => [-out, ...inflows]);

/** Double precision over some 40 discounted terms, against the size of the terms: cancellation is not the code's. */
const expectClose = (given: number, wanted: number, size: number): void => {
  expect(Math.abs(given - wanted)).toBeLessThanOrEqual(1e-12 * size);
};

describe('against general-purpose finance libraries', () => {
  test('net present value', () => {
    fc.assert(
      fc.property(flowsOfAnySign, ratePercents, (flows, ratePercent) => {
        const { discounted } = sumsOf(plain, { flows, ratePercent });
        const npv = plain.value(netPresentValue(plain, discounted)).toNumber();
        const size = discounted.reduce((sum, flow) => sum + plain.value(flow).abs().toNumber(), 1);
        expectClose(npv, financial.npv(ratePercent / 100, flows), size);
        const [first, ...rest] = flows as [number, ...number[]];
        expectClose(npv, first + Number(NPV(ratePercent / 100, ...rest)), size);
      }),
      runs
    );
  });

  test('internal rate of an investment', () => {
    let [compared, comparedSecond] = [0, 0];
    fc.assert(
      fc.property(investments, (flows) => {
        const { flows: given } = sumsOf(plain, { flows, ratePercent: 0 });
        const rates = internalRates(plain, given);
        expect(rates.kind).toBe('one');
        const rate = (plain.value(rates.ratePercent) as number) / 100;
        /** Net present value at a rate, as a share of the size of its terms. */
        const imbalanceAt = (at: number): number => {
          const terms = flows.map((flow, year) => flow * (1 + at) ** -year);
          const size = terms.reduce((sum, term) => sum + Math.abs(term), 0);
          return Math.abs(terms.reduce((sum, term) => sum + term, 0)) / size;
        };
        // A rate is a double near −1 at worst: what that leaves open of 1 + i, every power multiplies.
        const open = (Number.EPSILON * flows.length) / (1 + rate);
        expect(imbalanceAt(rate)).toBeLessThanOrEqual(1e-12 + 4 * open);
        // Both libraries search from a guess and may give up, or end, near −1, where the flows do not balance; started
        // at the answer, they confirm it.
        const confirms = (theirs: number): boolean => imbalanceAt(theirs) <= 1e-9;
        const theirs = financial.irr(flows, rate, 1e-12, 200);
        if (confirms(theirs)) {
          compared += 1;
          expect(Math.abs(theirs - rate)).toBeLessThanOrEqual(1e-6 * (1 + Math.abs(rate)));
        }
        const second: unknown = IRR(flows, rate);
        if (typeof second === 'number' && confirms(second)) {
          comparedSecond += 1;
          expect(Math.abs(second - rate)).toBeLessThanOrEqual(1e-6 * (1 + Math.abs(rate)));
        }
      }),
      runs
    );
    expect(compared).toBeGreaterThan(900);
    expect(comparedSecond).toBeGreaterThan(900);
  });

  test('payment and annuity', () => {
    fc.assert(
      fc.property(
        cents(-1_000_000, 1_000_000),
        ratePercents,
        fc.integer({ min: 1, max: 40 }),
        (present, ratePercent, years) => {
          const { factors } = sumsOf(plain, {
            flows: Array.from({ length: years + 1 }, () => 0),
            ratePercent
          });
          const presentValue = plain.assumption(new Decimal(present), 'currency', 'Given by the test.');
          const payment = plain.value(annuity(plain, { presentValue, factors })).toNumber();
          const factor = plain.value(annuityFactor(plain, factors)).toNumber();
          const rate = ratePercent / 100;
          // Their closed form loses digits as the rate nears 0, by about 1e-16 / rate.
          const loose = 1 + 0.001 / Math.max(Math.abs(rate), 1e-4);
          expectClose(payment, -financial.pmt(rate, years, present), loose * (1 + Math.abs(payment)));
          expectClose(payment, -Number(PMT(rate, years, present)), loose * (1 + Math.abs(payment)));
          expectClose(factor, -financial.pv(rate, years, 1), loose * factor);
          expectClose(factor, -Number(PV(rate, years, 1)), loose * factor);
        }
      ),
      runs
    );
  });

  test('a lease, in advance and in arrears, by present value and as the same amount each year', () => {
    fc.assert(
      fc.property(
        cents(1, 100_000),
        ratePercents,
        fc.integer({ min: 1, max: 30 }),
        fc.boolean(),
        (payment, percent, termYears, inAdvance) => {
          const ratePercent = plain.cell(percent, '%', 'given', 'rate');
          const flows = flowsOfPlan(
            plain,
            paymentPlan(plain, {
              units: plain.cell(1, '1', 'given', 'units'),
              terms: {
                perUnitPerYear: String(payment),
                growthPercent: 0,
                inAdvance,
                termYears,
                atEnd: 'return',
                endPricePerUnit: '0'
              },
              path: ['given'],
              startYear: 0,
              horizonYears: termYears
            })
          );
          const [cost] = compareOverEqualService(plain, { ways: [{ id: 'lease', flows }], ratePercent });
          const rate = percent / 100;
          const present = plain.value((cost as CostOfService).presentValue).toNumber();
          const when = inAdvance ? financial.PaymentDueTime.Begin : financial.PaymentDueTime.End;
          const loose = (1 + 0.001 / Math.max(Math.abs(rate), 1e-4)) * (1 + present);
          expectClose(present, -financial.pv(rate, termYears, payment, 0, when), loose);
          expectClose(present, -Number(PV(rate, termYears, payment, 0, inAdvance ? 1 : 0)), loose);
          const yearly = plain.value((cost as CostOfService).equivalentAnnualCost).toNumber();
          expectClose(yearly, -Number(PMT(rate, termYears, present)), loose);
        }
      ),
      runs
    );
  });
});
