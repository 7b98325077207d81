/** No physical figure stands in the core without a record of its source: every number written there is looked at. */
import ts from 'typescript';
import { expect, test } from 'vitest';
import { coreSources } from './core-sources.ts';

/** Numbers that carry no physics wherever they stand. */
const plainNumbers: Readonly<Record<string, string>> = {
  '0': 'nothing, the first, or no change',
  '1': 'one, the whole, or the next',
  '2': 'a half, a square, the second',
  '10': 'base of the logarithm in which MAC falls with age, and of powers of ten',
  '60': 'minutes in an hour',
  '100': 'percent in the whole',
  '1000': 'millilitres in a litre, litres in a cubic metre, watts in a kilowatt, kilograms in a tonne'
};

/**
 * Numbers that stand in one file for a reason of its own; `named` for constants with a name at the head of the file,
 * `every` for all that stand in it.
 */
const allowed: readonly {
  readonly file: string;
  readonly numbers: readonly string[] | 'named' | 'every';
  readonly because: string;
}[] = [
  {
    file: 'case/circle-system.ts',
    numbers: 'named',
    because:
      'coefficients and step control of the method; the two that shape the model, the mixing time and the share of the target that counts as reached, are said in every working of its results'
  },
  {
    file: 'case/circle-system.ts',
    numbers: ['3'],
    because: 'running sums that are kept, and a coefficient of the cubic between two steps'
  },
  {
    file: 'case/fresh-gas-flow.ts',
    numbers: ['0.25', '0.5', '4'],
    because: 'bounds of the flow classes, cited there; they name a flow and enter no figure'
  },
  {
    file: 'case/flow-curve.ts',
    numbers: 'named',
    because: 'which flows a curve is drawn at; each point is a case of its own'
  },
  {
    file: 'reckoning/agent-at-flow.ts',
    numbers: 'named',
    because: 'at which flows agents are compared; each point is a case of its own'
  },
  {
    file: 'reckoning/theatre-air.ts',
    numbers: 'named',
    because: 'the points of the course that is drawn; each is a minute of its own'
  },
  {
    file: 'year/scavenging-pumps.ts',
    numbers: ['365', '7'],
    because: 'days of a year and of a week'
  },
  {
    file: 'theatre-air/room-air.ts',
    numbers: ['60000'],
    because: 'L/min over m3/h into parts in a million'
  },
  {
    file: 'estimate/under-every-set.ts',
    numbers: 'named',
    because: 'horizons for which potentials are published, and rounding'
  },
  { file: 'known-cases/case-memo.ts', numbers: 'named', because: 'results kept for cases alike' },
  {
    file: 'case/target-fraction.ts',
    numbers: ['40'],
    because: 'MAC40 is the value at 40 years: part of the definition of the constant that it goes with'
  },
  {
    file: 'case/case-warnings.ts',
    numbers: ['3', '0.1', '0.5', '1.5', '12'],
    because:
      'figures shown in a sentence, the shortest sag that is told, a flow inside each band of the label, and the age below which a sentence speaks of children'
  },
  { file: 'money/budget-view.ts', numbers: ['5'], because: 'the budget years that are shown' },
  {
    file: 'money/equal-service.ts',
    numbers: ['600'],
    because: 'longest chain of lives that is followed, in years'
  },
  {
    file: 'limits.ts',
    numbers: 'every',
    because: 'limits of what may be entered; they refuse, and enter no figure'
  },
  {
    file: 'case/nitrous-oxide.ts',
    numbers: 'named',
    because: 'rounds and spans of the solution; its own test holds them to a library'
  },
  { file: 'case/flow-curve.ts', numbers: 'named', because: 'where a drawn curve ends, and its points' },
  {
    file: 'attribution/shapley.ts',
    numbers: 'named',
    because: 'the most changes whose sets are all run; it enters no figure'
  },
  {
    file: 'attribution/alternatives.ts',
    numbers: 'named',
    because: 'how far apart two sums must be to be told apart: rounding, no physics'
  },
  {
    file: 'year/reconciliation.ts',
    numbers: ['1e-9'],
    because: 'rounding; which finding is told, it enters no figure'
  },
  {
    file: 'estimate/estimate-warnings.ts',
    numbers: ['1e-9', '3'],
    because:
      'whether a use is what was bought, but for rounding, and digits in a sentence; it enters no figure'
  },
  {
    file: 'year/measured-use-warnings.ts',
    numbers: ['0.5', '2', '3'],
    because: 'when a measured spill far from the model’s is pointed out, and digits in its sentence'
  },
  { file: 'monitoring/monitoring-needs.ts', numbers: ['3'], because: 'the highest level of facilities' },
  {
    file: 'input.ts',
    numbers: ['20', '500'],
    because: 'the horizons for which warming potentials are published'
  },
  { file: 'case-memo.ts', numbers: 'named', because: 'results kept before the oldest make room' },
  { file: 'money/decimal.ts', numbers: ['28'], because: 'digits of the decimal arithmetic' },
  {
    file: 'money/internal-rate.ts',
    numbers: ['8'],
    because: 'rounding steps within which a value counts as 0'
  },
  {
    file: 'money/solve.ts',
    numbers: ['16', '1e-9', '1.5'],
    because: 'bracketing and tolerance of the root search'
  }
];

/** Places where a number limits, tests or orders, and enters no result. */
function limitsOrTests(node: ts.Node): boolean {
  for (let here: ts.Node = node; here.parent; here = here.parent)
    if (
      ts.isPropertyAssignment(here.parent) &&
      /^(testRange|from|to|toFixed)$/.test(here.parent.name.getText())
    )
      return true;
  return false;
}

/** Whether a number stands in the declaration of a constant outside every function. */
function isNamed(node: ts.Node): boolean {
  let here = node;
  while (!ts.isSourceFile(here.parent)) {
    if (ts.isFunctionLike(here)) return false;
    here = here.parent;
  }
  return ts.isVariableStatement(here) && (here.declarationList.flags & ts.NodeFlags.Const) !== 0;
}

test('numbers in the core are conversions, counts, limits of input, or listed with a reason', () => {
  const found = new Map<string, Set<string>>();
  for (const [file, text] of coreSources) {
    // What others measured, and in which patients: each row cites its study, and no figure of a workbook rests on it.
    if (file.startsWith('published/')) continue;
    // Chance, and how it is drawn: the room knows no anaesthesia and no money.
    if (/^(uncertainty|what-if)\//.test(file)) continue;
    const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
    const visit = (node: ts.Node): void => {
      if (ts.isNumericLiteral(node) && !limitsOrTests(node)) {
        const written = node.getText().replaceAll('_', '');
        const known =
          written in plainNumbers ||
          allowed.some(
            ({ file: of, numbers }) =>
              of === file &&
              (numbers === 'every' || (numbers === 'named' ? isNamed(node) : numbers.includes(written)))
          );
        if (!known) found.set(file, (found.get(file) ?? new Set()).add(written));
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  expect([...found].map(([file, numbers]) => `${file}: ${[...numbers].join(' ')}`)).toEqual([]);
});
