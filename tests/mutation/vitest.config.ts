/** The tests that mutants of the core and of the document are tried on: those of other rooms only take longer. */
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { defineConfig } from 'vitest/config';
import base from '../../vite.config.ts';

/** Ways by which tests of these kinds are found, those first that notice most in a second. */
const kinds = ['tests/whole/', 'tests/unit/', 'tests/published/', 'tests/property/'];

class MostTellingFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number =>
      kinds.findIndex((kind) => moduleId.includes(kind));
    return [...files].sort((a, b) => rank(a) - rank(b) || (a.moduleId < b.moduleId ? -1 : 1));
  }
}

/**
 * They ask whether the same calculation, done in two ways, comes to the same, in many workbooks, which takes the most
 * time and notices the least. What they alone would notice counts as a survivor.
 */
const slow = [
  'tests/property/{one-cell,working,reading-order,extreme-numbers,attribution,estimate,files-*}.test.ts',
  'tests/unit/calc/known-cases/recorded-case.test.ts',
  'tests/unit/calc/working/every-working.test.ts',
  'tests/unit/calc/{ordinary-ids,attribution/step-what-if,what-if/changed-cell}.test.ts'
];

const { projects: _, ...usual } = base.test ?? {};

export default defineConfig({
  ...base,
  test: {
    ...usual,
    include: ['tests/{whole,published,property}/**/*.test.ts', 'tests/unit/{calc,workbook}/**/*.test.ts'],
    exclude: slow,
    isolate: false,
    sequence: { sequencer: MostTellingFirst }
  }
});
