import { describe, expect, test } from 'vitest';
import { alike, dimensionOf, disagreement } from './dimensions.ts';
import { formulasInUse, unitsInUse } from './formulas-in-use.ts';

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
    const wrong = unitsInUse.filter(({ formula, name, unit }) => {
      const wanted = formula.inputs[name]?.unit ?? '1';
      return unit !== wanted && !alike(dimensionOf(unit), dimensionOf(wanted));
    });
    expect(wrong.map(({ formula, name, unit }) => `${formula.id}, ${name}: ${unit}`)).toEqual([]);
  });

  test('of an input that is not converted are written as the formula writes them', () => {
    const unlike = unitsInUse.filter(({ formula, name, unit }) => unit !== formula.inputs[name]?.unit);
    expect(
      unlike.map(
        ({ formula, name, unit }) => `${formula.id}, ${name}: ${unit}, not ${formula.inputs[name]?.unit}`
      )
    ).toEqual([]);
  });

  test('are met for every input of a formula', () => {
    const missed = formulas.flatMap(({ id, inputs }) =>
      Object.keys(inputs)
        .filter((name) => !unitsInUse.some((met) => met.formula.inputs === inputs && met.name === name))
        .map((name) => `${id}, ${name}`)
    );
    expect(missed).toEqual([]);
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
