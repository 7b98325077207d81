/** How many required monitors are lacking: what the bottom line says of monitoring. */
import type { MonitorItem } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { UnpricedNeed } from './monitoring-needs.ts';
import { deviceFor } from './theatres-missing.ts';

export interface OpenGaps {
  /** Required items that at least one theatre lacks. */
  readonly missing: readonly UnpricedNeed['item'][];
  /** Required items of which the stock does not tell. */
  readonly unknown: readonly UnpricedNeed['item'][];
}

type Need = Pick<UnpricedNeed, 'item' | 'level' | 'applies' | 'theatresMissing'>;

/** Required monitors that theatres lack, each counted once, however many rules ask for it. */
export function openGaps(needs: readonly Need[]): OpenGaps {
  const required = needs.filter(({ level, applies }) => level === 'required' && applies === 'yes');
  const itemsWith = (test: (need: Need) => boolean) => [
    ...new Set(required.filter(test).map(({ item }) => item))
  ];
  return {
    missing: itemsWith(({ theatresMissing }) => (theatresMissing ?? 0) > 0),
    unknown: itemsWith(({ item, theatresMissing }) => theatresMissing === null && deviceFor(item) === item)
  };
}

export const gapIn = formula<{ theatres: number }>({
  id: 'monitoring.gap',
  yields: 'Whether a required monitor is lacking',
  words: '1 where at least one theatre lacks it, otherwise 0',
  expression: 'min(1, n)',
  inputs: { theatres: { symbol: 'n', unit: '1', words: 'theatres that lack it' } },
  unit: '1',
  source: 'definition',
  compute: ({ theatres }) => Math.min(1, theatres)
});

export const countOfGaps = formula<{ gaps: readonly number[] }>({
  id: 'monitoring.gaps',
  yields: 'Required monitors that theatres lack',
  words:
    'Each required monitor that a theatre lacks, counted once however many rules ask for it; those of which the stock does not tell are not counted.',
  expression: 'sum(g)',
  inputs: { gaps: { symbol: 'g', unit: '1', words: 'whether it is lacking' } },
  unit: '1',
  source: 'definition',
  compute: ({ gaps }) => gaps.reduce((sum, gap) => sum + gap, 0)
});

/**
 * The number of `missing`, from the theatres that lack each required monitor.
 * @param lackingIn of the places, by their index, in which some rule requires the item
 */
export function gapsOf(
  r: Reckoner,
  needs: readonly (Need & Pick<UnpricedNeed, 'places'>)[],
  lackingIn: (item: MonitorItem, places: readonly number[]) => Quantity
): Quantity {
  const places = new Map<MonitorItem, Set<number>>();
  const unknown = new Set<MonitorItem>();
  for (const { item, level, applies, theatresMissing, places: asking } of needs) {
    const device = deviceFor(item);
    if (level !== 'required' || applies !== 'yes' || device === null) continue;
    if (theatresMissing === null) unknown.add(device);
    const known = places.get(device) ?? new Set();
    for (const place of asking) known.add(place);
    places.set(device, known);
  }
  const gaps = [...places].flatMap(([device, asking]) =>
    unknown.has(device)
      ? []
      : [
          r.apply(gapIn, {
            theatres: lackingIn(
              device,
              [...asking].sort((a, b) => a - b)
            )
          })
        ]
  );
  return r.apply(countOfGaps, { gaps });
}
