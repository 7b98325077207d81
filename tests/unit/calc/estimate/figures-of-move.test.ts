import { expect, it } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { figuresOfMove } from '#lib/calc/estimate/figures-of-move.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { moveToReferenceSet } from '#lib/workbook/move-reference-set.ts';

const old = { ...demoWorkbook(), referenceSet: '2026-1' };
const moved = moveToReferenceSet(old);
const rows = figuresOfMove(coreInput(old), coreInput(moved.workbook));

it('tells constant by constant what differs, by name', () => {
  expect(moved.changes.join('\n')).toContain('Oxygen consumption per weight to the power 0.75: 10 ');
  expect(moved.changes.join('\n')).toContain(
    'CO2 that lime without strong base takes up in clinical use: 66 L/kg becomes 90 L/kg.'
  );
});

it('tells the figures of every scenario as the two estimates have them', () => {
  const after = estimate(coreInput(moved.workbook)).scenarios;
  expect(rows).toHaveLength(6 * old.scenarios.length);
  old.scenarios.forEach(({ name }, i) => {
    const absorbent = rows.find(
      ({ scenario, figure }) => scenario === name && figure === 'Absorbent in a year'
    );
    expect(absorbent?.after).toBe(after[i]?.perYear.absorbentKg);
    // Less CO2 is breathed out under anaesthesia, so less absorbent is used.
    expect(absorbent!.after).toBeLessThan(absorbent!.before);
  });
});

it('tells no change where there is none', () => {
  for (const { before, after } of figuresOfMove(coreInput(old), coreInput(old))) expect(after).toBe(before);
});
