import { describe, expect, test } from 'vitest';
import { deletePhases, duplicatePhases, insertPhases, movePhases } from '#lib/workbook/edit-phases.ts';
import type { RowsChanged } from '#lib/workbook/edit-rows.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

const demo = demoWorkbook();
const workbook: Workbook = {
  ...demo,
  flowPlans: demo.flowPlans.map((plan) => {
    const [washIn, rest] = plan.phases;
    if (washIn === undefined || rest === undefined) throw new Error('A plan of the demo has two phases.');
    return plan.id === 'usual' ? { ...plan, phases: [washIn, { ...washIn, name: 'Second' }, rest] } : plan;
  }),
  ranges: {
    'flowPlans.usual.phases.0.flowLPerMin': { low: 5, high: 7 },
    'flowPlans.low.phases.0.flowLPerMin': { low: 5, high: 7 },
    'caseMix.breast.minutes': { low: 80, high: 90 }
  },
  keptTexts: {
    'flowPlans.usual.phases.1.minutes': 'a while',
    'flowPlans.low.phases.0.minutes': 'a while'
  }
};

describe('phases are known by their place: once places change,', () => {
  const changes: readonly (readonly [string, RowsChanged])[] = [
    ['moved', movePhases(workbook, { plan: 'usual', rows: [0], by: 1 })],
    ['inserted', insertPhases(workbook, { plan: 'usual', at: 0, count: 1 })],
    ['deleted', deletePhases(workbook, { plan: 'usual', rows: [0] })],
    ['duplicated', duplicatePhases(workbook, { plan: 'usual', rows: [0] })]
  ];

  test.each(changes)(
    'as when some are %s, the plan’s ranges and kept texts go, and no others',
    (_, changed) => {
      if ('sentence' in changed) throw new Error(changed.sentence);
      expect(changed.workbook.ranges).toEqual({
        'flowPlans.low.phases.0.flowLPerMin': { low: 5, high: 7 },
        'caseMix.breast.minutes': { low: 80, high: 90 }
      });
      expect(changed.workbook.keptTexts).toEqual({ 'flowPlans.low.phases.0.minutes': 'a while' });
    }
  );
});
