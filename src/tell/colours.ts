/** Colours of the letter, for light and dark: text on ground holds at least 4.5 : 1, lines 3 : 1 (WCAG 2.2 AA). */
import { power } from '../elementary/powers.js';
export interface LetterColours {
  readonly ground: string;
  readonly panel: string;
  readonly ink: string;
  readonly faint: string;
  readonly line: string;
  readonly accent: string;
  readonly alarm: string;
}

export const light: LetterColours = {
  ground: '#FBFAF7',
  panel: '#F1EEE6',
  ink: '#1F2328',
  faint: '#595650',
  line: '#8A857B',
  accent: '#00568A',
  alarm: '#9C3D00',
};
export const dark: LetterColours = {
  ground: '#17191C',
  panel: '#22262B',
  ink: '#E9E6DF',
  faint: '#B3AEA4',
  line: '#7D7971',
  accent: '#7CC4F2',
  alarm: '#F2A46B',
};
export const print: LetterColours = {
  ground: '#FFFFFF',
  panel: '#FFFFFF',
  ink: '#000000',
  faint: '#444444',
  line: '#767676',
  accent: '#000000',
  alarm: '#7A2F00',
};

/** Contrast ratio of two `#RRGGBB` colours, 1..21 (WCAG 2.2, "contrast ratio" and "relative luminance"). */
export function contrast(one: string, other: string): number {
  const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : power((share + 0.055) / 1.055, 2.4);
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
