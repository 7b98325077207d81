/** Reads the colours that tokens.css gives to each theme: what the tests check is what the page uses. */
import { readFileSync } from 'node:fs';

export type Theme = 'light' | 'dark' | 'print';
export const themes: readonly Theme[] = ['light', 'dark', 'print'];

const css = readFileSync(new URL('../../../src/lib/sheets/frame/tokens.css', import.meta.url), 'utf8');
const print = /@media print \{([\s\S]*)\}/.exec(css)?.[1] ?? '';
const screen = css.replace(print, '');

/** The token's colour as `#rrggbb`. Throws where the token has none. */
export function tokenColour(token: string, theme: Theme): string {
  const printed = new RegExp(`${token}: (#[0-9a-f]{6});`).exec(print)?.[1];
  if (theme === 'print' && printed !== undefined) return printed;
  const found = new RegExp(
    `${token}: (?:light-dark\\((#[0-9a-f]{6}), (#[0-9a-f]{6})\\)|(#[0-9a-f]{6}));`
  ).exec(screen);
  const colour = found?.[3] ?? (theme === 'dark' ? found?.[2] : found?.[1]);
  if (colour === undefined) throw new Error(`tokens.css gives ${token} no colour for ${theme}`);
  return colour;
}
