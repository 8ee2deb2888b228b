/** The letter on paper, and every screen as a picture that is not blank. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { root } from '../cli/run.js';
import { launchHere, letterPath, letterText, openLetter, type Letter } from './letter.js';
import { pagesOf } from './pdf.js';
import { SCREENS } from './screens.js';

let browser: Browser;
beforeAll(async () => {
  browser = await launchHere();
});
afterAll(() => browser.close());

/** Page sizes in points (ISO 216; ANSI/ASME Y14.1). */
const PAPERS = { A4: [595, 842], Letter: [612, 792] } as const;

let letter: Letter;
beforeAll(async () => {
  letter = await openLetter(browser, letterPath('1-commuter-bar.html'));
});
afterAll(() => letter.close());

/** The letter on paper as a reader has it. */
async function printed(reader: 'owner' | 'consultant', format: keyof typeof PAPERS) {
  await letter.page.getByLabel(reader, { exact: true }).check();
  await letter.page.waitForSelector(`body[data-reader=${reader}]`);
  return pagesOf(await letter.page.pdf({ format }));
}

describe.each(Object.keys(PAPERS) as (keyof typeof PAPERS)[])('the demo on %s', (format) => {
  // The answer, six pictures, findings, cautions and sixty inputs with their sources fill four pages and a part of one.
  it('is two to five pages with running head and page numbers, drawn as lines, without a control', async () => {
    const pages = await printed('consultant', format);
    expect(pages[0]!.text).toMatch(/What to have clean at opening.*Total/);
    expect(pages[0]!.text).toMatch(
      /Of the \d+ inputs that this answer uses, \d+ (?:is|are) measured and \d+ assumed.*that matter most:/,
    );
    expect(pages.length).toBeGreaterThanOrEqual(2);
    expect(pages.length).toBeLessThanOrEqual(5);
    pages.forEach(({ text, width, height, images }, index) => {
      // Within a point: papers are measured in whole millimetres or inches, pages in whole dots.
      expect(Math.abs(width - PAPERS[format][0])).toBeLessThan(1.5);
      expect(Math.abs(height - PAPERS[format][1])).toBeLessThan(1.5);
      expect(text).toContain('Cups and glasses for Tern & Tide');
      expect(text).toContain(`Page ${index + 1} of ${pages.length}`);
      expect(images).toBe(0);
    });
    const whole = pages.map(({ text }) => text).join('\n');
    const { stock } = JSON.parse(await letterText('1-commuter-bar.json')) as {
      stock: { ware: string; pieces: number }[];
    };
    const cups = stock.find(({ ware }) => ware === 'medium-cup')?.pieces;
    expect(cups).toBeGreaterThan(0);
    expect(whole).toContain(`Have ${cups} medium cups`);
    for (const control of [
      'Save as',
      'Save the',
      'Read this letter as',
      'The table behind',
      'What if',
      'Open a scenario',
    ])
      expect(whole).not.toContain(control);
  });

  it('is one page for the owner: answer, order, what is assumed, cautions', async () => {
    const pages = await printed('owner', format);
    expect(pages).toHaveLength(1);
    for (const part of [
      'in all',
      'Total',
      'that matter most',
      'Take care',
      'Scalds',
      'Page 1 of 1',
    ])
      expect(pages[0]!.text).toContain(part);
  });
});

describe('pictures of the screens under reports/', () => {
  let page: Page;
  beforeAll(async () => {
    page = await browser.newPage();
  });
  afterAll(() => page.close());

  it.each(SCREENS.map(({ name }) => [name]))('%s is there, small and not blank', async (name) => {
    const path = join(root, 'reports', name);
    expect(existsSync(path), `${name} is missing: npm run reports`).toBe(true);
    const bytes = readFileSync(path);
    expect(bytes.length).toBeLessThanOrEqual(150_000);
    const colours = await page.evaluate(
      async (address) => {
        const image = new Image();
        image.src = address;
        await image.decode();
        const canvas = new OffscreenCanvas(image.naturalWidth, image.naturalHeight);
        const drawing = canvas.getContext('2d')!;
        drawing.drawImage(image, 0, 0);
        return new Set(
          new Uint32Array(drawing.getImageData(0, 0, canvas.width, canvas.height).data.buffer),
        ).size;
      },
      `data:image/png;base64,${bytes.toString('base64')}`,
    );
    expect(colours).toBeGreaterThan(20);
  });

  it('holds none of a screen that is no more', () => {
    expect(
      readdirSync(join(root, 'reports'))
        .filter((name) => name.endsWith('.png'))
        .sort(),
    ).toEqual(SCREENS.map(({ name }) => name).sort());
  });
});
