/** Records whose citation named two works, with the one of them that holds the figures of anaesthetic practice. */
import type { Constant, Source } from './constant.ts';
import type { ReferenceSet } from './reference-set.ts';
import { sulbaekAndersen2012 } from './sources.ts';

const ofPractice: Source = {
  authors: 'Sulbaek Andersen MP et al.',
  title: 'Assessing the impact on global climate from general anesthetic gases',
  container: 'Anesth Analg',
  year: 2012,
  locator: '114:1081-5'
};
const one = <T extends { readonly source: Source }>(cited: T): T =>
  cited.source === sulbaekAndersen2012 ? { ...cited, source: ofPractice } : cited;

/** The records of a set, or their alternatives, that cite both articles of 2012 at once. */
export const oneWorkEach = ({ constants }: ReferenceSet): readonly Constant[] =>
  [...constants.values()]
    .filter(({ source, alternatives }) =>
      [source, ...alternatives.map((other) => other.source)].includes(sulbaekAndersen2012)
    )
    .map((record) => one({ ...record, alternatives: record.alternatives.map(one) }));
