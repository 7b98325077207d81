/** Published sets of MAC and of solubility as sets from 2026-3 on have them: a cell of the workbook chooses among them. */
import { constant } from './constant.ts';
import type { Constant } from './constant.ts';
import { otherMacAndSolubility } from './other-mac-and-solubility.ts';
import { millerComparison } from './sources.ts';

const bound = (id: string, name: string, value: number) =>
  constant({
    id: `mac-textbook.${id}`,
    name,
    value,
    printed: String(value),
    unit: 'y',
    source: millerComparison,
    evidence: 'second-hand',
    kind: 'age',
    unusedBecause: 'A bound: it tells for which ages the set holds, and enters no figure.'
  });

export const choiceOfGroups: readonly Constant[] = [
  ...otherMacAndSolubility.map((record) => {
    const { unusedBecause, ...used } = record;
    if (unusedBecause === undefined) throw new Error(`“${record.id}” was in use before.`);
    return used;
  }),
  bound('youngest', 'Age from which the textbook’s set of MAC holds', 30),
  bound('oldest', 'Age up to which the textbook’s set of MAC holds', 55)
];
