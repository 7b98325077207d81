/** The app's own desk, keeper, run and widths, made once with what the browser gives; a test makes its own. */
import { BreakEvenQuestions } from './break-even.svelte.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { keepStorage, openIndexedDbShelf } from '#lib/storage/indexed-db-shelf.ts';
import { lastVisit } from '#lib/storage/last-visit.ts';
import { randomId } from '#lib/storage/random-id.ts';
import { tabLock } from '#lib/storage/tab-lock.ts';
import { unsavedDrafts } from '#lib/storage/unsaved-drafts.ts';
import { workbookStore } from '#lib/storage/workbook-store.ts';
import { defaultLocale } from '#lib/numbers/locale-marks.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { WidthsOfColumns } from './column-widths.svelte.ts';
import { Desk } from './desk.svelte.ts';
import { UncertaintyRun } from './draws.svelte.ts';
import { Keeper } from './keeper.svelte.ts';
import { openCasesPort } from '#lib/background/solve-ahead.ts';
import { openWhatIfPort } from '#lib/background/what-if-port.ts';

const cores = navigator.hardwareConcurrency || 2;

export const desk = new Desk({
  workbook: demoWorkbook(),
  locale: defaultLocale(),
  openPort: openCasesPort,
  // The page itself wants a core, and each worker holds the workbook.
  workers: Math.min(4, cores - 1),
  estimateOf: estimate,
  now: () => new Date()
});

export const keeper = new Keeper({
  desk,
  store: workbookStore({ openShelf: openIndexedDbShelf }),
  drafts: unsavedDrafts(() => localStorage),
  lastVisit: lastVisit({ ofTab: () => sessionStorage, ofBrowser: () => localStorage }),
  openLock: tabLock,
  keepStorage,
  now: () => new Date(),
  newName: randomId
});

export const uncertaintyRun = new UncertaintyRun({
  desk,
  openPort: openWhatIfPort,
  // Two cores are what the target computer has; more help less and less, and make it hot.
  workers: Math.min(4, cores)
});

export const columnWidths = new WidthsOfColumns();

/** Break-even questions about the workbook on the desk, for a page as long as it is shown. */
export const breakEvenQuestions = (): BreakEvenQuestions => new BreakEvenQuestions(openWhatIfPort);
