/** The list with the entry at `from` taken out and put in again so that it stands at `to`. Places count from 0. */
export function movedTo<T>(list: readonly T[], { from, to }: { from: number; to: number }): readonly T[] {
  const entry = list.slice(from, from + 1);
  return list.toSpliced(from, 1).toSpliced(to, 0, ...entry);
}
