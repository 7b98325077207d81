/** Dimensions of formulas: exponents of mass, length, time …, of money and of CO2e, with units read by a library. */
import type {
  ConditionalNode,
  ConstantNode,
  FactoryFunctionMap,
  FunctionNode,
  MathNode,
  OperatorNode,
  ParenthesisNode,
  SymbolNode
} from 'mathjs';
import { all, create } from 'mathjs';
import type { AnyFormula } from './recorded.ts';

const math = create(all as FactoryFunctionMap);
math.createUnit('currency');
math.createUnit('CO2e');

/** Exponents of the base units. `null` for a bare number in a sum or comparison: it takes on what it stands beside. */
type Dimension = readonly number[];

/** The dimension of a unit as the core writes it; fractions, percentages and multiples of MAC are pure numbers. */
export function dimensionOf(written: string): Dimension {
  const said = written
    .replace('°C', 'K')
    .replace(/%|\bMAC\b|\bppm\b/g, '1')
    .replace(/\by\b|\byears\b/g, 'year');
  // Dividing a unit by itself gives a unit without dimension, which the library will not read from “1”.
  const unit = said === '1' ? math.unit(1, 'm/m') : math.unit(1, said.replace(/^1\/(.*)$/, 'm/m/($1)'));
  return (unit as unknown as { dimensions: number[] }).dimensions;
}

const pure = dimensionOf('1');
const times = (a: Dimension, b: Dimension, sign = 1): Dimension =>
  a.map((power, i) => power + sign * (b[i] ?? 0));
export const alike = (a: Dimension, b: Dimension): boolean =>
  a.every((power, i) => Math.abs(power - (b[i] ?? 0)) < 1e-9);

/** What is wrong with the units of a formula, in words; null where they agree. */
export function disagreement({ expression, inputs, unit }: AnyFormula): string | null {
  if (expression === null) return null;
  const bySymbol = new Map(
    Object.values(inputs).map((input) => [input.symbol, dimensionOf(input.unit)] as const)
  );
  try {
    const found = evaluate(math.parse(expression), bySymbol);
    if (found === null || alike(found, dimensionOf(unit))) return null;
    return `the expression ${expression} is not of the unit ${unit}`;
  } catch (error) {
    return (error as Error).message;
  }
}

function evaluate(node: MathNode, units: ReadonlyMap<string, Dimension>): Dimension | null {
  const of = (below: MathNode): Dimension | null => evaluate(below, units);
  const factor = (below: MathNode): Dimension => of(below) ?? pure;
  switch (node.type) {
    case 'ConstantNode':
      return null;
    case 'ParenthesisNode':
      return of((node as ParenthesisNode).content);
    case 'SymbolNode': {
      const known = units.get((node as SymbolNode).name);
      if (known === undefined) throw new Error(`${String(node)} is no input`);
      return known;
    }
    case 'ConditionalNode': {
      const { condition, trueExpr, falseExpr } = node as ConditionalNode;
      of(condition);
      return together(node, [of(trueExpr), of(falseExpr)]);
    }
    case 'FunctionNode': {
      const { fn, args } = node as FunctionNode;
      const name = String(fn);
      if (/^(sum|max|min|abs)$/.test(name)) return together(node, args.map(of));
      if (name === 'dot') return times(factor(args[0] as MathNode), factor(args[1] as MathNode));
      return mustBePure(node, args.map(factor));
    }
    case 'OperatorNode':
      return ofOperator(node as OperatorNode, of, factor);
    default:
      throw new Error(`${String(node)} is of a kind that has no dimension here`);
  }
}

function ofOperator(
  node: OperatorNode,
  of: (node: MathNode) => Dimension | null,
  factor: (node: MathNode) => Dimension
): Dimension | null {
  const [left, right] = node.args as [MathNode, MathNode];
  switch (String(node.fn)) {
    case 'multiply':
      return times(factor(left), factor(right));
    case 'divide':
      return times(factor(left), factor(right), -1);
    case 'add':
    case 'subtract':
      return together(node, [of(left), of(right)]);
    case 'unaryMinus':
      return of(left);
    case 'pow': {
      if (right.type === 'ConstantNode')
        return factor(left).map((power) => power * Number((right as ConstantNode).value));
      return mustBePure(node, [factor(left), factor(right)]);
    }
    default:
      // Comparisons.
      return together(node, [of(left), of(right)]);
  }
}

/** Things that are added or compared have one dimension; a bare number has that of the others. */
function together(node: MathNode, parts: readonly (Dimension | null)[]): Dimension | null {
  const known = parts.filter((part) => part !== null);
  const first = known[0] ?? null;
  if (first !== null && known.some((part) => !alike(part, first)))
    throw new Error(`${String(node)} puts unlike units together`);
  return first;
}

function mustBePure(node: MathNode, parts: readonly Dimension[]): Dimension {
  if (parts.some((part) => !alike(part, pure))) throw new Error(`${String(node)} takes pure numbers`);
  return pure;
}
