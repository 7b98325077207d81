let stopReturning = (): void => undefined;

/**
 * Scrolls the page to `topPx`, and again each time its height changes, since charts and answers fill it after it is
 * there; until the user does something.
 */
export function returnToPlace(topPx: number): void {
  stopReturning();
  const root = document.documentElement;
  const scroll = (): void => scrollTo({ top: topPx, behavior: 'instant' });
  const heights = new ResizeObserver(scroll);
  const events = ['wheel', 'pointerdown', 'touchstart', 'keydown'] as const;
  stopReturning = () => {
    heights.disconnect();
    root.style.removeProperty('overflow-anchor');
    for (const event of events) removeEventListener(event, stopReturning, true);
  };
  for (const event of events) addEventListener(event, stopReturning, true);
  // Else the browser holds to what happened to be in sight while the page was still short.
  root.style.setProperty('overflow-anchor', 'none');
  scroll();
  heights.observe(document.body);
}
