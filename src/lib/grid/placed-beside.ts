/**
 * Puts a floating element under a cell, or above it where there is more room, and into the browser's top layer, which
 * no scroll area cuts off. Svelte attachment; the element has `position: fixed`.
 */
export function placedBeside(anchor: () => Element | DOMRect | null) {
  return (floating: HTMLElement) => {
    const place = () => {
      const at = anchor();
      if (at === null) return;
      const box = at instanceof Element ? at.getBoundingClientRect() : at;
      const { width, height } = floating.getBoundingClientRect();
      const edgePx = 4;
      const below = window.innerHeight - box.bottom;
      const top =
        below >= height + edgePx || below >= box.top ? box.bottom : Math.max(edgePx, box.top - height);
      const left = Math.max(edgePx, Math.min(box.left, window.innerWidth - width - edgePx));
      floating.style.setProperty('left', `${left}px`);
      floating.style.setProperty(
        'top',
        `${Math.min(top, Math.max(edgePx, window.innerHeight - height - edgePx))}px`
      );
      if (at instanceof Element) floating.style.setProperty('min-width', `${box.width}px`);
    };
    if (typeof floating.showPopover === 'function') {
      floating.popover = 'manual';
      floating.showPopover();
    }
    place();
    window.addEventListener('scroll', place, { capture: true, passive: true });
    window.addEventListener('resize', place);
    const sized = typeof ResizeObserver === 'undefined' ? null : new ResizeObserver(place);
    sized?.observe(floating);
    return () => {
      sized?.disconnect();
      window.removeEventListener('scroll', place, { capture: true });
      window.removeEventListener('resize', place);
    };
  };
}
