// @vitest-environment jsdom
/** The figure around a chart: its words, its table, and what happens where nothing can be drawn. */
import { cleanup, configure, render, screen, fireEvent, waitFor } from '@testing-library/svelte';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import ChartFigure from '#lib/charts/ChartFigure.svelte';
import { yearlyNet } from '#lib/charts/yearly-net.ts';

// The library is waited for as long as it takes to load; a busy computer fails no sound test.
configure({ asyncUtilTimeout: 300_000 });

const library = vi.hoisted(() => ({ missing: false }));
vi.mock('chart.js', async (original) => {
  if (library.missing) throw new Error('no network');
  return await original();
});

const data = yearlyNet({
  scenario: 'Closed circuit',
  currency: 'EUR',
  cashFlow: ['-2000.00', '700.00'],
  path: 'new.againstBaseline.years'
});
const nothing = yearlyNet({ scenario: 'Today', currency: 'EUR', cashFlow: ['0.00'] });

beforeEach(() => {
  // What a browser has and jsdom has not; a canvas of no width is never drawn on.
  vi.stubGlobal(
    'ResizeObserver',
    class {
      observe(): void {}
      unobserve(): void {}
      disconnect(): void {}
    }
  );
  vi.stubGlobal('matchMedia', () => ({
    addEventListener: () => undefined,
    removeEventListener: () => undefined
  }));
  Object.defineProperty(document, 'fonts', { configurable: true, value: { load: async () => [] } });
});
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
  library.missing = false;
});

describe('the figure around a chart', () => {
  // First, as the library is fetched once for all charts.
  it('puts the table in place of a chart that cannot be drawn', async () => {
    library.missing = true;
    render(ChartFigure, { data });
    await waitFor(() => expect(screen.getByRole('status').textContent).toMatch(/figures are in the table/));
    expect(screen.getByRole('table')).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Save picture (PNG)' })).toBeNull();
    expect(screen.getByRole('button', { name: 'Save data (CSV)' })).toBeTruthy();
  });

  it('tries again with the next chart, once the library can be had', async () => {
    render(ChartFigure, { data });
    await waitFor(() => expect(screen.queryByText('Drawing the chart …')).toBeNull());
    expect(screen.queryByRole('status')).toBeNull();
    expect(screen.getByRole('img')).toBeTruthy();
  });

  it('has a heading, its sentence, and an image that a screen reader is told about', () => {
    render(ChartFigure, { data, headingLevel: 3 });
    expect(screen.getByRole('heading', { level: 3 }).textContent).toBe(data.title);
    expect(screen.getByText(data.summary).tagName).toBe('P');
    expect(screen.getByRole('img').getAttribute('aria-label')).toBe(`${data.title}. ${data.summary}`);
  });

  it('shows the table on request, and asks for a figure by its path', async () => {
    const asked = vi.fn();
    render(ChartFigure, { data, onask: asked });
    expect(screen.queryByRole('table')).toBeNull();
    const button = screen.getByRole('button', { name: 'Show table' });
    expect(button.getAttribute('aria-expanded')).toBe('false');
    await fireEvent.click(button);
    expect(button.getAttribute('aria-expanded')).toBe('true');
    expect(screen.getAllByRole('row')).toHaveLength(3);
    await fireEvent.click(screen.getByRole('button', { name: '\u22122,000' }));
    expect(asked).toHaveBeenCalledWith(
      expect.objectContaining({ path: 'new.againstBaseline.years.0.net', text: '\u22122,000' })
    );
    await fireEvent.click(screen.getByRole('button', { name: 'Hide table' }));
    expect(screen.queryByRole('table')).toBeNull();
  });

  it('shows plain figures where nobody answers', async () => {
    render(ChartFigure, { data });
    await fireEvent.click(screen.getByRole('button', { name: 'Show table' }));
    expect(screen.queryByRole('button', { name: '\u22122,000' })).toBeNull();
    expect(screen.getByRole('cell', { name: '\u22122,000' })).toBeTruthy();
  });

  it('says what to do where there is nothing to draw, and offers nothing to save', () => {
    render(ChartFigure, { data: nothing });
    expect(screen.getByText(/^Nothing to draw: Today costs and saves the same/)).toBeTruthy();
    expect(screen.queryByRole('img')).toBeNull();
    expect(screen.queryAllByRole('button')).toEqual([]);
  });
});
