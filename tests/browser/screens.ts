/** Each screen of the page as a picture. Run by `npm run reports`, which keeps them under reports/. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { launch } from './launch.js';
import { unpackBrowser } from './unpack-browser.js';

export interface Screen {
  readonly name: string;
  /** Which of the letters given: the demo or the blank one; with `#reader`. */
  readonly letter: 'demo' | 'blank';
  readonly reader?: string;
  readonly options: BrowserContextOptions;
  /** What to do before the picture is taken. */
  readonly first?: (page: Page) => Promise<void>;
}

const wide = { viewport: { width: 1080, height: 760 } };
const phone = { viewport: { width: 390, height: 844 } };

const ask =
  (question: string) =>
  async (page: Page): Promise<void> => {
    await page.click(`#ask-${question} > summary`);
    // What is not whole yet has a button to give it up.
    await page.waitForSelector(`#ask-${question}:not(:has(button.plain)) :is(table, svg, .wrong)`, {
      state: 'attached',
      timeout: 60_000,
    });
    await page.locator(`#ask-${question}`).evaluate((fold) => fold.scrollIntoView());
    await page.waitForTimeout(200);
  };

export const SCREENS: readonly Screen[] = [
  { name: 'screen-owner.png', letter: 'demo', options: wide },
  { name: 'screen-owner-dark.png', letter: 'demo', options: { ...wide, colorScheme: 'dark' } },
  { name: 'screen-owner-phone.png', letter: 'demo', options: phone },
  { name: 'screen-consultant.png', letter: 'demo', reader: 'consultant', options: wide },
  {
    name: 'screen-trainer.png',
    letter: 'demo',
    reader: 'trainer',
    options: wide,
    first: (page) => page.waitForSelector('#walk svg').then(() => undefined),
  },
  { name: 'screen-blank.png', letter: 'blank', options: wide },
  {
    name: 'screen-pieces.png',
    letter: 'demo',
    options: wide,
    first: async (page) => {
      await page.click('#pieces > summary');
      await page.fill('#pieces-medium-cup', '23');
      await page.waitForSelector('.status[data-phase=certified]', { timeout: 60_000 });
      await page.waitForFunction(() => document.querySelector('[data-older]') === null);
    },
  },
  ...['moves', 'alternatives', 'map', 'racks', 'suit', 'order'].map((question): Screen => ({
    name: `screen-${question}.png`,
    letter: 'demo',
    options: wide,
    first: ask(question),
  })),
];

/** @param letters paths of the two letters; @param folder to write to */
export async function writeScreens(
  letters: Readonly<Record<Screen['letter'], string>>,
  folder: string,
): Promise<void> {
  const unpacked = await unpackBrowser();
  const browser = await launch(unpacked);
  try {
    for (const { name, letter, reader, options, first } of SCREENS) {
      const context = await browser.newContext({
        locale: 'en-IE',
        reducedMotion: 'reduce',
        ...options,
      });
      const page = await context.newPage();
      await page.goto(`file://${letters[letter]}${reader === undefined ? '' : `#${reader}`}`);
      await page.waitForSelector('html[data-ready]', { state: 'attached' });
      await first?.(page);
      await page.screenshot({ path: join(folder, name) });
      await context.close();
    }
  } finally {
    await browser.close();
    rmSync(unpacked.folder, { recursive: true, force: true });
  }
}
