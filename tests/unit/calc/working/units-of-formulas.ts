import { describe, expect, test } from 'vitest';
import type { Working } from '#lib/calc/working/working.ts';
import { alike, dimensionOf, disagreement } from './dimensions.ts';
import { formulasInUse, recordings } from './formulas-in-use.ts';
import { formulaOf } from './recorded.ts';

const formulas = [...formulasInUse.values()].map(({ formula }) => formula);

describe('the units of every formula', () => {
  test.each(formulas.filter(({ empirical }) => !empirical).map((formula) => [formula.id, formula] as const))(
    '%s agrees',
    (_, formula) => {
      expect(disagreement(formula)).toBeNull();
    }
  );

  test('are checked for all but the fits to data, whose coefficients carry units of their own', () => {
    expect(
      formulas
        .filter(({ empirical }) => empirical)
        .map(({ id }) => id)
        .sort()
    ).toEqual([
      'case.cardiac-output',
      'case.co2-production',
      'case.fat-volume-in-obesity',
      'case.lean-weight',
      'case.mac-at-age',
      'case.oxygen-uptake',
      'case.residual-in-obesity'
    ]);
  });

  test('are those of what goes into them', () => {
    const wrong = recordings.flatMap(({ steps }) =>
      steps.flatMap((step) =>
        Object.entries(step.inputs).flatMap(([name, input]) =>
          ([input].flat() as readonly Working[])
            .filter((each) => {
              const wanted = formulaOf(step).inputs[name]?.unit ?? '1';
              return each.unit !== wanted && !alike(dimensionOf(each.unit), dimensionOf(wanted));
            })
            .map((each) => `${formulaOf(step).id}, ${name}: ${each.unit}`)
        )
      )
    );
    expect([...new Set(wrong)]).toEqual([]);
  });

  test('of an input that is not converted are written as the formula writes them', () => {
    const unlike = new Set<string>();
    for (const { steps } of recordings)
      for (const step of steps)
        for (const [name, input] of Object.entries(step.inputs))
          for (const each of [input].flat() as readonly Working[])
            if (each.unit !== formulaOf(step).inputs[name]?.unit)
              unlike.add(
                `${formulaOf(step).id}, ${name}: ${each.unit}, not ${formulaOf(step).inputs[name]?.unit}`
              );
    expect([...unlike]).toEqual([]);
  });
});

describe('the check of dimensions', () => {
  const wrong = {
    id: 'x',
    yields: '',
    words: '',
    source: 'definition',
    unit: 'L',
    inputs: {
      a: { symbol: 'a', unit: 'L/min', words: '' },
      b: { symbol: 'b', unit: 'min', words: '' },
      c: { symbol: 'c', unit: 'kg', words: '' }
    },
    compute: () => 0
  };

  test.each([
    ['a * b', null],
    ['a / b', 'not of the unit'],
    ['a * b + c', 'unlike units'],
    ['max(0, a * b)', null],
    ['a > c ? a * b : 0', 'unlike units'],
    ['exp(a)', 'pure numbers'],
    ['d * b', 'no input']
  ])('of %s says %s', (expression, says) => {
    const said = disagreement({ ...wrong, expression });
    if (says === null) expect(said).toBeNull();
    else expect(said).toContain(says);
  });
});
