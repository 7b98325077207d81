import { describe, expect, it } from 'vitest';
import { placeLabel, placesAround } from '#lib/charts/place-label.ts';

const area = { left: 0, top: 0, width: 200, height: 100 };
const at = (left: number, top: number) => ({ left, top, width: 40, height: 16 });

describe('the place of a label', () => {
  it('is the first that covers nothing', () => {
    const box = placeLabel([at(10, 10), at(60, 10), at(110, 10)], {
      area,
      taken: [],
      ink: [{ x: 20, y: 15 }]
    });
    expect(box).toEqual(at(60, 10));
  });

  it('covers as little of the lines as may be where none is free', () => {
    const ink = [
      { x: 20, y: 15 },
      { x: 30, y: 15 },
      { x: 70, y: 15 }
    ];
    expect(placeLabel([at(10, 10), at(60, 10)], { area, taken: [], ink })).toEqual(at(60, 10));
  });

  it('never covers another label and never leaves the plot', () => {
    expect(placeLabel([at(10, 10)], { area, taken: [at(40, 20)], ink: [] })).toBeNull();
    expect(placeLabel([at(-5, 10), at(170, 10), at(10, 90)], { area, taken: [], ink: [] })).toBeNull();
  });

  it('around a spot at the edge slides along it to stay inside', () => {
    const places = placesAround({ x: 5, y: 50 }, { width: 40, height: 16, gap: 4, area });
    const box = placeLabel(places.slice(6), { area, taken: [], ink: [] });
    expect(box).toEqual({ left: 0, top: 30, width: 40, height: 16 });
  });
});
