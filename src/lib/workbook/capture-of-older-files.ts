/** What capture means since a scenario also says what of it is lost again: files that do not say it are older. */

/**
 * A sentence for each scenario of an older file that captures agent: its share was of all that is vented, and is of what
 * leaves by the exhaust since then, so that less is caught.
 */
export const notesOnCapture = (document: Record<string, unknown>): readonly string[] =>
  (Array.isArray(document['scenarios']) ? (document['scenarios'] as unknown[]) : []).flatMap((entry) => {
    if (typeof entry !== 'object' || entry === null || 'caughtLostPercent' in entry) return [];
    const { name, capturePercent } = entry as Record<string, unknown>;
    return typeof capturePercent === 'number' && capturePercent > 0
      ? [
          `“${typeof name === 'string' ? name : ''}” captures ${capturePercent} %: of what leaves by the exhaust now, and no longer of what leaks or patients breathe out later, so less is caught and more is emitted.`
        ]
      : [];
  });
