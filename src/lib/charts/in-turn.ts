/** Work that takes a while each, done one piece a task: in between, the page answers its user. */

const waiting = new Set<() => void>();

/**
 * Has the work done after all that is waiting already, never at once.
 * @returns takes it back, if it has not been done yet.
 */
export function inTurn(work: () => void): () => void {
  waiting.add(work);
  if (waiting.size === 1) setTimeout(doNext);
  return () => void waiting.delete(work);
}

function doNext(): void {
  const [work] = waiting;
  if (work === undefined) return;
  waiting.delete(work);
  // Before the work, so that one that throws holds up no other.
  if (waiting.size > 0) setTimeout(doNext);
  work();
}
