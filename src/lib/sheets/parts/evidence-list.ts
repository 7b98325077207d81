/** The constants as the Evidence sheet lists them: by how well they are known, the weakest first, and by what is sought. */
import type { Constant, Evidence } from '#lib/calc/reference/constant.ts';
import { citation } from '#lib/calc/working/citation.ts';

export interface Sought {
  readonly text: string;
  readonly evidence: Evidence | 'all';
  readonly own: boolean;
}

export interface EvidenceGroup {
  readonly evidence: Evidence;
  readonly title: string;
  readonly words: string;
  readonly constants: readonly Constant[];
}

const groups: readonly Omit<EvidenceGroup, 'constants'>[] = [
  {
    evidence: 'memory',
    title: 'From memory: the weak floor',
    words:
      'Recalled, not read in the source. Check these first, and replace one by a figure that you can cite.'
  },
  {
    evidence: 'second-hand',
    title: 'Read second-hand',
    words: 'Read in a text that quotes the source, not in the source itself.'
  },
  {
    evidence: 'computed',
    title: 'Computed',
    words: 'Follow from other records by the formula that each shows.'
  },
  { evidence: 'read', title: 'Read in the source', words: 'Read in the work that is cited.' }
];

const textOf = ({ id, name, conditions, source, kind, printed, unit, alternatives }: Constant): string =>
  [
    id,
    name,
    conditions,
    citation(source),
    kind,
    printed,
    unit,
    ...alternatives.map((other) => citation(other.source))
  ]
    .join(' ')
    .toLowerCase();

/**
 * The groups that hold something of what is sought; every word has to be found in a record. In a group, those whose name
 * alone has every word come first: the titles of works name other things too.
 */
export function evidenceGroups(constants: Iterable<Constant>, sought: Sought): readonly EvidenceGroup[] {
  const words = sought.text.toLowerCase().split(/\s+/).filter(Boolean);
  const hasAll = (text: string): boolean => words.every((word) => text.includes(word));
  const [named, mentioned]: [Constant[], Constant[]] = [[], []];
  for (const constant of constants) {
    if (sought.evidence !== 'all' && constant.evidence !== sought.evidence) continue;
    if (sought.own && constant.override === undefined) continue;
    if (hasAll(constant.name.toLowerCase())) named.push(constant);
    else if (hasAll(textOf(constant))) mentioned.push(constant);
  }
  const found = [...named, ...mentioned];
  return groups
    .map((group) => ({
      ...group,
      constants: found.filter(({ evidence }) => evidence === group.evidence)
    }))
    .filter(({ constants: of }) => of.length > 0);
}
