/** Every algebraic formula as printed, evaluated by a general-purpose expression library, against its code. */
import { describe, expect, test } from 'vitest';
import { parseExpression } from '#lib/calc/working/expression.ts';
import type { Expression } from '#lib/calc/working/expression.ts';
import { coreSources } from './core-sources.ts';
import { formulasInUse, methodIds } from './formulas-in-use.ts';
import { worstDifference } from './printed-against-code.ts';

describe('the formulas met', () => {
  test('are all that the core has', () => {
    // An id in the sources is a text of the form `room.what-it-is`, whether it stands in a record or is passed to one.
    const written = [...coreSources].flatMap(([file, source]) =>
      /^(attribution|case|year|emissions|fleet|money|monitoring|reckoning|against|theatre-air)/.test(file)
        ? [
            ...source.matchAll(
              /'((?:theatre-air|attribution|case|year|emissions|fleet|money|monitoring)\.[a-z0-9-]+)'/g
            )
          ].map((match) => match[1])
        : []
    );
    const figures = [...coreSources.values()].flatMap((source) =>
      source.includes('MethodReport') ? [...source.matchAll(/`(case|money)\.\$\{/g)] : []
    );
    expect(figures.length).toBeGreaterThan(0);
    expect(new Set(written).size).toBeGreaterThan(100);
    expect(
      [...new Set(written)].filter((id) => !formulasInUse.has(id ?? '') && !methodIds.has(id ?? ''))
    ).toEqual([]);
  });

  test('each are read by the one reader of the notation, and hold no symbol but those of their inputs', () => {
    const symbolsIn = (of: Expression): string[] => {
      switch (of.kind) {
        case 'number':
          return [];
        case 'symbol':
          return [of.symbol];
        case 'bracket':
        case 'negative':
          return symbolsIn(of.of);
        case 'pair':
          return [of.left, of.right].flatMap(symbolsIn);
        case 'choice':
          return [of.condition, of.yes, of.no].flatMap(symbolsIn);
        case 'call':
          return of.given.flatMap(symbolsIn);
      }
    };
    for (const { formula } of formulasInUse.values()) {
      if (formula.expression === null) continue;
      const named = Object.values(formula.inputs).map(({ symbol }) => symbol);
      const found = symbolsIn(parseExpression(formula.expression));
      expect(
        found.filter((symbol) => !named.includes(symbol)),
        formula.id
      ).toEqual([]);
    }
  });

  test('each print symbols that are letters, digits and underscores, no two alike', () => {
    for (const { formula } of formulasInUse.values()) {
      const symbols = Object.values(formula.inputs).map(({ symbol }) => symbol);
      expect(new Set(symbols).size, formula.id).toBe(symbols.length);
      for (const symbol of symbols) expect(symbol, formula.id).toMatch(/^[A-Za-z][A-Za-z0-9_]*$/);
    }
  });
});

describe('each formula as printed equals its code on 200 random inputs', () => {
  test.each([...formulasInUse.values()].map(({ formula, sample }) => [formula.id, formula, sample] as const))(
    '%s',
    (_, formula, sample) => {
      expect(worstDifference(formula, sample)).toBeLessThanOrEqual(1e-13);
    }
  );
});
