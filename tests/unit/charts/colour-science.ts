/** Contrast, colour-vision deficiency and colour distance, for the tests of the tokens. */

/** Linear sRGB, 0 to 1. */
export type Rgb = readonly [number, number, number];
/** CIE L*a*b*, D65. */
export type Lab = readonly [number, number, number];
type Matrix = readonly [Rgb, Rgb, Rgb];

/** IEC 61966-2-1 (sRGB) from `#rrggbb`. */
export function linearRgb(hex: string): Rgb {
  const channel = (at: number): number => {
    const value = parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
}

/** WCAG 2.2, "relative luminance" and "contrast ratio": 1 to 21. */
export function contrast(one: string, other: string): number {
  const luminance = (hex: string): number => {
    const [r, g, b] = linearRgb(hex);
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const [darker, lighter] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (lighter + 0.05) / (darker + 0.05);
}

/**
 * Machado, Oliveira & Fernandes, "A physiologically-based model for simulation of color vision deficiency", IEEE
 * Transactions on Visualization and Computer Graphics 15 (2009) 1291, doi 10.1109/TVCG.2009.113: severity 1.0, on
 * linear RGB. Figures read second-hand, the same in several independent reprints of the table.
 */
export const visions: Readonly<Record<string, Matrix>> = {
  'full colour vision': [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1]
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998]
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881]
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039]
  ]
};

export function seenWith(matrix: Matrix, colour: Rgb): Rgb {
  const row = ([r, g, b]: Rgb): number =>
    Math.min(1, Math.max(0, r * colour[0] + g * colour[1] + b * colour[2]));
  return [row(matrix[0]), row(matrix[1]), row(matrix[2])];
}

/** CIE 15, with the D65 white of sRGB. */
export function lab([r, g, b]: Rgb): Lab {
  const root = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = root((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047);
  const y = root(0.2126729 * r + 0.7151522 * g + 0.072175 * b);
  const z = root((0.0193339 * r + 0.119192 * g + 0.9503041 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

const degrees = (radians: number): number => ((radians * 180) / Math.PI + 360) % 360;
const cos = (angle: number): number => Math.cos((angle * Math.PI) / 180);
const sin = (angle: number): number => Math.sin((angle * Math.PI) / 180);

/** CIEDE2000 colour difference (CIE 142; formula as set out by Sharma, Wu & Dalal 2005, doi 10.1002/col.20070). */
export function colourDistance([l1, a1, b1]: Lab, [l2, a2, b2]: Lab): number {
  const seventh = (chroma: number): number => Math.sqrt(chroma ** 7 / (chroma ** 7 + 25 ** 7));
  const stretch = 1.5 - 0.5 * seventh((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2);
  const c1 = Math.hypot(a1 * stretch, b1);
  const c2 = Math.hypot(a2 * stretch, b2);
  const h1 = degrees(Math.atan2(b1, a1 * stretch));
  const h2 = degrees(Math.atan2(b2, a2 * stretch));
  const grey = c1 * c2 === 0;
  const apart = Math.abs(h2 - h1) > 180;
  const turn = grey ? 0 : h2 - h1 + (apart ? (h2 > h1 ? -360 : 360) : 0);
  const hue = grey ? h1 + h2 : (h1 + h2 + (apart ? (h1 + h2 < 360 ? 360 : -360) : 0)) / 2;
  const lightness = (l1 + l2) / 2;
  const chroma = (c1 + c2) / 2;

  const t =
    1 - 0.17 * cos(hue - 30) + 0.24 * cos(2 * hue) + 0.32 * cos(3 * hue + 6) - 0.2 * cos(4 * hue - 63);
  const dL = (l2 - l1) / (1 + (0.015 * (lightness - 50) ** 2) / Math.sqrt(20 + (lightness - 50) ** 2));
  const dC = (c2 - c1) / (1 + 0.045 * chroma);
  const dH = (2 * Math.sqrt(c1 * c2) * sin(turn / 2)) / (1 + 0.015 * chroma * t);
  const rotation = -2 * seventh(chroma) * sin(60 * Math.exp(-(((hue - 275) / 25) ** 2)));
  return Math.sqrt(dL ** 2 + dC ** 2 + dH ** 2 + rotation * dC * dH);
}
