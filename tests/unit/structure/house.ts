/**
 * Who may import whom. Places are relative to `src`: a folder ends with a slash and means all that lies in it. Every
 * room knows itself; the first room that holds a file is the file's room.
 */
export interface Room {
  readonly place: string;
  /** Places whose code and types it may import. */
  readonly knows: readonly string[];
  /** Places of which it may import types alone. */
  readonly knowsTypesOf?: readonly string[];
}

/** What may be put into the core, how its cells are named, and what comes out: plain TypeScript, the same for all. */
const contract = [
  'lib/calc/input.ts',
  'lib/calc/limits.ts',
  'lib/calc/own-entry.ts',
  'lib/calc/baseline-of.ts',
  'lib/calc/cell-path.ts',
  'lib/calc/pumps-known.ts',
  'lib/calc/estimate-types.ts',
  'lib/calc/line-names.ts'
];
const parts = [...contract, 'lib/calc/reference/', 'lib/calc/working/'];

/** What a sheet may be made of, beside what it reads of the state. */
const onSheets = ['lib/grid/', 'lib/charts/', 'lib/numbers/', 'lib/workbook/', 'lib/state/'];
/**
 * The core as sheets see it: its contract, its published figures, how a working is told, and how what it found is sorted.
 * What has to be computed, with its working, they ask of the state.
 */
const coreForSheets = [
  ...contract,
  'lib/calc/reference/',
  'lib/calc/working/citation.ts',
  'lib/calc/working/expression.ts',
  'lib/calc/working/working-text.ts',
  'lib/calc/estimate/capture-warnings.ts',
  'lib/calc/monitoring/cautions.ts',
  'lib/calc/monitoring/gaps.ts',
  'lib/calc/monitoring/level-order.ts',
  'lib/calc/attribution/levers.ts',
  'lib/calc/published/published-checks.ts',
  'lib/calc/uncertainty/spread-parts.ts',
  'lib/calc/uncertainty/weights.ts',
  'lib/calc/what-if/model-spread.ts',
  'lib/calc/what-if/questions.ts',
  'lib/calc/what-if/spill-spread.ts'
];

export const rooms: readonly Room[] = [
  // The core, from the inside out. The first rooms take quantities as arguments and do not know each other.
  { place: 'lib/calc/reference/', knows: [], knowsTypesOf: ['lib/calc/working/'] },
  { place: 'lib/calc/working/', knows: [], knowsTypesOf: ['lib/calc/reference/'] },
  { place: 'lib/calc/case/', knows: parts },
  { place: 'lib/calc/emissions/', knows: parts },
  { place: 'lib/calc/theatre-air/', knows: parts },
  { place: 'lib/calc/money/', knows: parts, knowsTypesOf: ['lib/calc/fleet/'] },
  { place: 'lib/calc/monitoring/', knows: parts },
  { place: 'lib/calc/fleet/', knows: parts },
  { place: 'lib/calc/uncertainty/', knows: parts },
  { place: 'lib/calc/year/', knows: [...parts, 'lib/calc/case/'] },
  { place: 'lib/calc/known-cases/', knows: [...parts, 'lib/calc/case/'] },
  // What others measured against the model: nobody in the core knows it.
  { place: 'lib/calc/published/', knows: [...parts, 'lib/calc/case/'] },
  {
    place: 'lib/calc/reckoning/',
    knows: [
      ...parts,
      'lib/calc/case/',
      'lib/calc/known-cases/',
      'lib/calc/year/',
      'lib/calc/emissions/',
      'lib/calc/theatre-air/',
      'lib/calc/money/',
      'lib/calc/monitoring/',
      'lib/calc/fleet/'
    ]
  },
  {
    place: 'lib/calc/attribution/',
    knows: [
      ...parts,
      'lib/calc/case/',
      'lib/calc/known-cases/',
      'lib/calc/fleet/',
      'lib/calc/money/',
      'lib/calc/reckoning/'
    ]
  },
  {
    place: 'lib/calc/what-if/',
    knows: [
      ...parts,
      'lib/calc/case/',
      'lib/calc/known-cases/',
      'lib/calc/money/',
      'lib/calc/uncertainty/',
      'lib/calc/fleet/',
      'lib/calc/reckoning/',
      'lib/calc/attribution/',
      'lib/calc/estimate/'
    ]
  },
  {
    place: 'lib/calc/estimate/',
    knows: [
      ...parts,
      'lib/calc/case/',
      'lib/calc/known-cases/',
      'lib/calc/year/',
      'lib/calc/emissions/',
      'lib/calc/money/',
      'lib/calc/monitoring/',
      'lib/calc/fleet/',
      'lib/calc/reckoning/',
      'lib/calc/attribution/'
    ]
  },
  { place: 'lib/calc/input.ts', knows: [], knowsTypesOf: ['lib/calc/reference/'] },
  { place: 'lib/calc/limits.ts', knows: [] },
  { place: 'lib/calc/own-entry.ts', knows: [] },
  { place: 'lib/calc/pumps-known.ts', knows: [], knowsTypesOf: ['lib/calc/input.ts'] },
  { place: 'lib/calc/baseline-of.ts', knows: [], knowsTypesOf: ['lib/calc/input.ts'] },
  { place: 'lib/calc/cell-path.ts', knows: ['lib/calc/own-entry.ts'] },
  { place: 'lib/calc/estimate-types.ts', knows: [], knowsTypesOf: ['lib/calc/'] },
  { place: 'lib/calc/line-names.ts', knows: [], knowsTypesOf: ['lib/calc/'] },

  // The document, and its ways in and out.
  { place: 'lib/numbers/', knows: [] },
  {
    place: 'lib/workbook/',
    knows: [...contract, 'lib/calc/reference/', 'lib/numbers/'],
    knowsTypesOf: ['lib/calc/']
  },
  {
    place: 'lib/files/',
    // A spreadsheet's formulas are written from the same reading as those on screen.
    knows: [...contract, 'lib/workbook/', 'lib/numbers/', 'lib/calc/working/expression.ts'],
    knowsTypesOf: ['lib/calc/']
  },
  { place: 'lib/storage/', knows: ['lib/workbook/', 'lib/files/read/workbook-file.ts'] },
  { place: 'lib/background/', knows: ['lib/calc/', 'lib/workbook/', 'lib/files/', 'lib/numbers/'] },
  { place: 'lib/batch/', knows: ['lib/calc/', 'lib/workbook/', 'lib/files/'] },

  // What is seen.
  { place: 'lib/grid/', knows: ['lib/numbers/'], knowsTypesOf: ['lib/calc/'] },
  { place: 'lib/charts/', knows: ['lib/numbers/', 'lib/calc/line-names.ts'], knowsTypesOf: ['lib/calc/'] },
  {
    place: 'lib/state/',
    knows: ['lib/calc/', 'lib/workbook/', 'lib/files/', 'lib/storage/', 'lib/background/', 'lib/numbers/']
  },
  // A sheet reads the document's fields and the state; bytes in and out go through the state. A sheet knows the parts
  // that all sheets share, and never another sheet.
  {
    place: 'lib/sheets/frame/',
    knows: [...onSheets, ...coreForSheets, 'lib/sheets/parts/', 'lib/sheets/working/'],
    knowsTypesOf: ['lib/calc/']
  },
  {
    place: 'lib/sheets/parts/',
    knows: [...onSheets, ...coreForSheets, 'lib/sheets/frame/', 'lib/sheets/working/'],
    knowsTypesOf: ['lib/calc/', 'lib/files/']
  },
  {
    place: 'lib/sheets/working/',
    knows: [...onSheets, ...coreForSheets, 'lib/sheets/frame/', 'lib/sheets/parts/'],
    knowsTypesOf: ['lib/calc/']
  },
  ...[
    ...['case-mix', 'case', 'flow-plans', 'prices', 'machines', 'scenarios', 'comparison', 'payback'],
    ...[
      'uncertainty',
      'monitoring',
      'evidence',
      'report',
      'files',
      'workbooks',
      'theatres',
      'theatre-air',
      'emissions'
    ]
  ].map((sheet): Room => ({
    place: `lib/sheets/${sheet}/`,
    knows: [...onSheets, ...coreForSheets, 'lib/sheets/frame/', 'lib/sheets/parts/', 'lib/sheets/working/'],
    knowsTypesOf: ['lib/calc/', 'lib/files/', 'lib/background/', 'lib/storage/']
  })),
  { place: 'routes/', knows: ['lib/sheets/', 'lib/state/'] },
  { place: 'service-worker.ts', knows: [] },
  { place: 'app.d.ts', knows: [] }
];

const pages = ['lib/grid/', 'lib/charts/', 'lib/state/', 'lib/sheets/', 'routes/'];

/** One door for each third-party package: the only places that import it, so that it can be changed in one place. */
export const doors: Readonly<Record<string, readonly string[]>> = {
  zod: ['lib/workbook/'],
  'decimal.js': ['lib/calc/money/'],
  'chart.js': ['lib/charts/Chart.svelte'],
  papaparse: ['lib/files/'],
  hucre: ['lib/files/'],
  'jsonc-parser': ['lib/files/read/json-fault.ts'],
  idb: ['lib/storage/'],
  '@fontsource-variable/source-sans-3': ['lib/sheets/', 'routes/'],
  // The framework draws pages; the core, the document and the files do without.
  svelte: pages,
  '@sveltejs/kit': ['routes/'],
  $app: ['lib/state/', 'lib/sheets/', 'routes/'],
  '$service-worker': ['service-worker.ts']
};
