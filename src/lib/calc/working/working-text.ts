import { citation, evidenceWords } from './citation.ts';
import type { StepWorking, Working } from './working.ts';

/** A value of any kind as text: numbers and decimals in full, lists by their length. */
export function valueText(value: unknown): string {
  if (value === null) return 'none';
  if (Array.isArray(value)) return `${value.length} values`;
  return String(value);
}

/** The inputs of a step or method, in order, lists taken apart. */
export function inputsOf(working: Working): readonly { readonly key: string; readonly input: Working }[] {
  if (working.kind !== 'step' && working.kind !== 'method') return [];
  return Object.entries(working.inputs).flatMap(([key, input]) =>
    (Array.isArray(input) ? (input as readonly Working[]) : [input as Working]).map((each) => ({
      key,
      input: each
    }))
  );
}

/** What a working is called: what its formula yields, or what its leaf is. */
export function nameOf(working: Working): string {
  switch (working.kind) {
    case 'step':
      return working.formula.yields;
    case 'method':
      return working.method.yields;
    case 'cell':
      return `Cell ${working.path}`;
    case 'constant':
      return working.constant.name;
    case 'default':
      return `${working.constant.name}, as ${working.path} is empty`;
    case 'assumption':
      return 'Assumption';
  }
}

/** The entries of a list with the largest values, either sign, in the order of the list. */
export function largestOf(list: readonly Working[], count: number): readonly Working[] {
  const size = ({ value }: Working): number => Math.abs(Number(value)) || 0;
  const kept = new Set(list.toSorted((a, b) => size(b) - size(a)).slice(0, count));
  return list.filter((each) => kept.has(each));
}

function firstCellUnder(working: Working): string | null {
  if (working.kind === 'cell') return working.path;
  for (const { input } of inputsOf(working)) {
    const cell = firstCellUnder(input);
    if (cell !== null) return cell;
  }
  return null;
}

/**
 * A working as indented text, down to the leaves. A step that several others use is written out once and referred to by
 * its number afterwards, so that the text grows with the number of steps and not of ways through them.
 * @param currency what stands for the unit of money, e.g. `EUR`
 * @param most of a list that is longer, as many of the largest entries are followed down to their leaves, and of each of
 *   the others its value and the first cell under it are written: a sum over 500 rows would fill a thousand pages.
 */
export function workingText(
  working: Working,
  currency: string,
  { most = Infinity }: { readonly most?: number } = {}
): string {
  const withUnit = (value: unknown, unit: string): string =>
    unit === '' || unit === '1' || value === null
      ? valueText(value)
      : `${valueText(value)} ${unit.replaceAll('currency', currency)}`;
  const numbers = new Map<Working, number>();
  const lines: string[] = [];
  write(working, 0, '');
  return lines.join('\n');

  /** The inputs that are followed: all that stand alone, and the largest of a list. */
  function followedIn({ inputs }: StepWorking): ReadonlySet<Working> {
    return new Set(
      Object.values(inputs).flatMap((input) => {
        const list = Array.isArray(input) ? (input as readonly Working[]) : [input as Working];
        return list.length <= most ? list : largestOf(list, most);
      })
    );
  }

  function write(node: Working, depth: number, symbol: string): void {
    const indent = '  '.repeat(depth);
    const head = symbol === '' ? '' : `${symbol}: `;
    if (node.kind === 'step' || node.kind === 'method') {
      const known = numbers.get(node);
      const value = withUnit(node.value, node.unit);
      if (known !== undefined) {
        lines.push(`${indent}${head}${nameOf(node)} = ${value} (see [${known}])`);
        return;
      }
      numbers.set(node, numbers.size + 1);
      lines.push(`${indent}${head}[${numbers.size}] ${nameOf(node)} = ${value}`);
      if (node.kind === 'step') {
        const { formula } = node;
        if (formula.expression !== null) lines.push(`${indent}  = ${formula.expression}`);
        lines.push(`${indent}  ${formula.words}`);
        if (formula.source !== 'definition') lines.push(`${indent}  Source: ${formula.source}`);
        const followed = followedIn(node);
        for (const { key, input } of inputsOf(node)) {
          const { symbol: of = key } =
            (formula.inputs as Record<string, { symbol: string }>)[key] ?? ({} as { symbol?: string });
          if (followed.has(input)) write(input, depth + 1, of);
          else {
            const cell = firstCellUnder(input);
            lines.push(
              `${indent}  ${of}: ${nameOf(input)} = ${withUnit(input.value, input.unit)}${cell === null ? '' : `, from cell ${cell}`}, worked out like the others`
            );
          }
        }
      } else {
        lines.push(`${indent}  ${node.method.words}`);
        lines.push(`${indent}  Source: ${node.method.source}`);
        for (const { words, value: figure, unit } of node.method.report)
          lines.push(`${indent}  ${words}: ${withUnit(figure, unit)}`);
        for (const { key, input } of inputsOf(node)) write(input, depth + 1, key);
      }
      return;
    }
    const value = withUnit(node.value, node.unit);
    switch (node.kind) {
      case 'cell':
        lines.push(`${indent}${head}${value}, cell ${node.path}`);
        return;
      case 'constant':
      case 'default': {
        const { constant } = node;
        const stands = node.kind === 'default' ? `, default of the empty cell ${node.path}` : '';
        const override =
          constant.override === undefined
            ? ''
            : ` In place of the published ${constant.override.publishedValue}: ${constant.override.reason}`;
        lines.push(
          `${indent}${head}${value}, ${constant.name}${stands}. ${citation(constant.source)} (${evidenceWords[constant.evidence]}).${override}`
        );
        return;
      }
      case 'assumption':
        lines.push(`${indent}${head}${value}, assumption: ${node.words}`);
    }
  }
}
