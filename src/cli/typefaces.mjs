// The letter's typefaces as a style sheet that carries them: cut down to the characters that a letter
// uses, so that page, print and cards are set alike on every machine.
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import subsetFont from 'subset-font';

const packages = fileURLToPath(new URL('../../node_modules/@expo-google-fonts/', import.meta.url));

/** `weights` may be a range: a heavier weight than any here is then not smeared from the nearest. */
const FACES = [
  { family: 'Letter Text', file: 'literata/400Regular/Literata_400Regular', weights: '400' },
  {
    family: 'Letter Text',
    file: 'literata/400Regular_Italic/Literata_400Regular_Italic',
    weights: '400',
    style: 'italic',
  },
  { family: 'Letter Text', file: 'literata/600SemiBold/Literata_600SemiBold', weights: '600 900' },
  { family: 'Letter Figures', file: 'inter/400Regular/Inter_400Regular', weights: '400' },
  { family: 'Letter Figures', file: 'inter/600SemiBold/Inter_600SemiBold', weights: '600 900' },
];

const range = (from, to) =>
  Array.from({ length: to - from + 1 }, (_, index) => String.fromCodePoint(from + index)).join('');

/** Latin as European names write it, punctuation, currency signs, and the few signs of our own words. */
const CHARACTERS = [
  range(0x20, 0x7e),
  range(0xa0, 0x17f),
  'ȘșȚț',
  range(0x2010, 0x2027),
  range(0x202f, 0x203a),
  range(0x20a0, 0x20c0),
  '⁄−×÷±≈≠≤≥½¼¾→←↑↓▸▾✓',
].join('');

/** Kerning, figures of one width, and marks put where they belong. */
const FEATURES = ['kern', 'liga', 'tnum', 'lnum', 'mark', 'mkmk', 'ccmp', 'locl'];

/** @returns the style sheet, the same bytes for the same packages */
export async function typefaceStyle() {
  const rules = await Promise.all(
    FACES.map(async ({ family, file, weights, style = 'normal' }) => {
      const whole = await readFile(`${packages}${file}.ttf`);
      const cut = await subsetFont(whole, CHARACTERS, {
        targetFormat: 'woff2',
        keepFeatures: FEATURES,
        noHinting: true,
      });
      return `@font-face{font-family:'${family}';font-weight:${weights};font-style:${style};src:url(data:font/woff2;base64,${cut.toString('base64')}) format('woff2')}`;
    }),
  );
  return `${rules.join('\n')}\n`;
}

/** @returns the licences of the typefaces, as their packages give them */
export async function typefaceLicences() {
  const texts = await Promise.all(
    ['literata', 'inter'].map((name) => readFile(`${packages}${name}/LICENSE_FONT`, 'utf8')),
  );
  return texts.join(`\n${'-'.repeat(80)}\n\n`);
}
