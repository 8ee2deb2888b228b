/** The letter brings its typefaces: it is set alike whatever the machine has, and needs bare. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { root } from '../cli/run.js';
import { launch } from './launch.js';
import { letterPath, openLetter } from './letter.js';
import { pagesOf } from './pdf.js';

/** A browser on a machine that has the typefaces of one folder, and no others. */
function launchWithFonts(name: string, folder: string): Promise<Browser> {
  const browser = inject('browser');
  const config = join(browser.folder, `fonts-${name}.conf`);
  writeFileSync(
    config,
    `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${folder}</dir><cachedir>${join(browser.folder, `cache-${name}`)}</cachedir></fontconfig>\n`,
  );
  return launch({ ...browser, env: { ...browser.env, FONTCONFIG_FILE: config } });
}

/** A browser with no typeface at all goes down at its first text box, whatever the page: `bare` has the one that it brings. */
const machines = {
  bare: () => launchWithFonts('bare', join(inject('browser').folder, 'fonts')),
  dejavu: () => launchWithFonts('dejavu', join(root, 'node_modules/dejavu-fonts-ttf/ttf')),
} as const;

/** Where every element of the letter stands, in hundredths of a pixel. */
const layout = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('main *, footer *')].map((element) => {
      const { x, y, width, height } = element.getBoundingClientRect();
      return `${element.tagName} ${[x, y + scrollY, width, height].map((one) => Math.round(one * 100)).join(' ')}`;
    }),
  );

/** Typefaces that glyphs of the page were taken from, with their number, and whether the letter brought them. */
async function facesUsed(page: Page): Promise<{ brought: number; others: string[] }> {
  const session = await page.context().newCDPSession(page);
  await session.send('DOM.enable');
  await session.send('CSS.enable');
  // The browser answers for an element's own text alone: the rest have none to ask about.
  await page.evaluate(() => {
    for (const element of document.querySelectorAll('main *, footer *'))
      if ([...element.childNodes].some((node) => node.nodeType === 3 && /\S/.test(node.nodeValue!)))
        element.setAttribute('data-says', '');
  });
  const { root: tree } = await session.send('DOM.getDocument', { depth: -1 });
  let brought = 0;
  const others = new Set<string>();
  const { nodeIds } = await session.send('DOM.querySelectorAll', {
    nodeId: tree.nodeId,
    selector: '[data-says]',
  });
  for (const nodeId of nodeIds) {
    const { fonts } = await session.send('CSS.getPlatformFontsForNode', { nodeId });
    for (const { isCustomFont, glyphCount, familyName } of fonts) {
      if (isCustomFont) brought += glyphCount;
      else others.add(familyName);
    }
  }
  return { brought, others: [...others] };
}

interface Seen {
  readonly wide: string[];
  readonly narrow: string[];
  readonly paper: readonly string[];
  /** Asked of one machine: it takes a question for each element. */
  readonly faces: { brought: number; others: string[] } | null;
}

/** The demo on a machine: on a wide and a narrow screen, and on paper. Its cards are set in the same typefaces; their pages are counted in boxes.test.ts. */
async function seenOn(machine: keyof typeof machines): Promise<Seen> {
  const browser = await machines[machine]();
  const { page, close } = await openLetter(browser, letterPath('short.html'));
  await page.evaluate(() => document.fonts.ready);
  const paper = pagesOf(await page.pdf({ format: 'A4' })).map(({ text }) => text);
  const faces = machine === 'dejavu' ? await facesUsed(page) : null;
  const wide = await layout(page);
  await page.setViewportSize({ width: 390, height: 844 });
  const narrow = await layout(page);
  await close();
  await browser.close();
  return { wide, narrow, paper, faces };
}

describe('the letter', () => {
  it('is set alike on a bare machine and on one with DejaVu, on screen and on paper', async () => {
    const bare = await seenOn('bare');
    const dejavu = await seenOn('dejavu');
    expect(bare.wide.length).toBeGreaterThan(500);
    expect(dejavu.wide).toEqual(bare.wide);
    expect(dejavu.narrow).toEqual(bare.narrow);
    expect(dejavu.paper).toEqual(bare.paper);
    expect(dejavu.faces!.brought).toBeGreaterThan(5_000);
    expect(dejavu.faces!.others).toEqual([]);
  });

  // Without this, the comparison above could be of two browsers with the same typefaces.
  it('would be set otherwise if it brought none', async () => {
    const widths: number[] = [];
    for (const start of Object.values(machines)) {
      const browser = await start();
      const page = await browser.newPage();
      await page.setContent(
        '<span style="font:20px sans-serif">Cups and saucers, 33 of them</span>',
      );
      widths.push(await page.locator('span').evaluate((one) => one.getBoundingClientRect().width));
      await browser.close();
    }
    expect(widths[0]).not.toBe(widths[1]);
  });
});
