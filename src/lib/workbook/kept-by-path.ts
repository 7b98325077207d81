import type { Workbook } from './workbook.ts';

/** What a workbook keeps of its cells under their paths. */
type KeptByPath = Pick<Workbook, 'ranges' | 'keptTexts' | 'neverGiven' | 'notes'>;

/** What is kept of cells by their paths, of those that stay: to be taken along by whatever takes cells away. */
export function keptOf(
  { ranges, keptTexts, neverGiven, notes }: Workbook,
  stays: (path: string) => boolean
): KeptByPath {
  const staying = <T>(record: Readonly<Record<string, T>>): Readonly<Record<string, T>> =>
    Object.fromEntries(Object.entries(record).filter(([path]) => stays(path)));
  return {
    ranges: staying(ranges),
    keptTexts: staying(keptTexts),
    ...(neverGiven === undefined ? {} : { neverGiven: neverGiven.filter(stays) }),
    ...(notes === undefined ? {} : { notes: staying(notes) })
  };
}
