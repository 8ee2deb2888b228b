/** The first view: answer, boxes and picture together; what a change does, undone or kept; and nothing provisional that passes for certified. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  bytesOf,
  certified,
  launchHere,
  letterPath,
  openLetter,
  saved,
  type Letter,
} from './letter.js';

let browser: Browser;
beforeAll(async () => {
  browser = await launchHere();
});
afterAll(() => browser.close());

const GUESTS = '[id="lead-arrivals.peak.guests"]';
const SEATS = '[id="lead-seats.count"]';

async function type(page: Page, box: string, text: string): Promise<void> {
  await page.fill(box, text);
  await page.press(box, 'Enter');
}

const provisional = (page: Page) => page.waitForSelector('.status[data-phase=provisional]');
const changedText = async (page: Page): Promise<string> =>
  (await page.locator('.changed p').innerText()).replace(/\s+/g, ' ');
const labels = (page: Page): Promise<string[]> => page.locator('.six label').allInnerTexts();

const asksOnLeaving = (page: Page): Promise<boolean> =>
  page.evaluate(() => !dispatchEvent(new Event('beforeunload', { cancelable: true })));

/** The letter of a group of tests: each takes a second or two to wake. They go in order, each from where the last one left it. */
function oneLetter(): { readonly now: Letter } {
  let letter: Letter | undefined;
  beforeAll(async () => {
    letter = await openLetter(browser, letterPath('short.html'), {
      viewport: { width: 1200, height: 800 },
    });
  });
  afterAll(() => letter?.close());
  return {
    get now() {
      return letter!;
    },
  };
}

describe('one view', () => {
  const letter = oneLetter();

  it('holds answer, boxes, picture and questions at 1200 × 800', async () => {
    const { page } = letter.now;
    await page.evaluate(() => document.fonts.ready);
    expect(await asksOnLeaving(page)).toBe(false);
    for (const part of [
      '[data-part=figures] .total',
      '[data-part=lead]',
      GUESTS,
      SEATS,
      '#box-stay',
      '[id="lead-guests.staysIn"]',
      '#machines',
      '[id="lead-clearing.every"]',
      '#box-level',
      '#pieces summary',
      '[data-part=tight] figure svg',
      '.asks summary >> nth=0',
    ]) {
      const box = await page.locator(part).first().boundingBox();
      expect(box, part).not.toBeNull();
      expect(box!.y + box!.height, part).toBeLessThanOrEqual(800);
    }
  });

  it('says in large figures what the sentence says', async () => {
    const { page } = letter.now;
    const lead = await page.locator('[data-part=lead]').innerText();
    const items = await page.locator('.figures li').allInnerTexts();
    expect(items.length).toBeGreaterThan(4);
    for (const item of items.slice(0, -1)) expect(lead).toContain(item.replace(/\s+/g, ' '));
    expect(lead).toContain(items.at(-1)!.split(/\s+/)[0]);
  });

  it('keeps six boxes in their order, and the focus in the box; those who listen hear once that work goes on, then the answer', async () => {
    const { page } = letter.now;
    const before = await labels(page);
    expect(before).toHaveLength(6);
    await page.evaluate(() => {
      const heard: string[] = [];
      const live = document.querySelector('.status [role=status]')!;
      new MutationObserver(() => {
        if (heard.at(-1) !== live.textContent) heard.push(live.textContent ?? '');
      }).observe(live, {
        childList: true,
        characterData: true,
        subtree: true,
      });
      Object.assign(window, { heard });
    });
    await type(page, GUESTS, '70');
    await certified(page);
    await page.waitForTimeout(1_500);
    const heard = await page.evaluate(() => (window as unknown as { heard: string[] }).heard);
    expect(heard.length).toBeLessThanOrEqual(2);
    expect(heard.at(-1)).toBe(await page.locator('[data-part=lead]').textContent());
    expect(await labels(page)).toEqual(before);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('lead-arrivals.peak.guests');
  });
});

describe('a change', () => {
  const letter = oneLetter();

  it('is told before and after, undone without days run, and kept as an alternative', async () => {
    const { page, faults } = letter.now;
    const lead = await page.locator('[data-part=lead]').innerText();
    await type(page, GUESTS, '90');
    await certified(page);
    const told = await changedText(page);
    expect(told).toMatch(/64 \/ h → 90 \/ h: \+\d+ .*\+€\d/);
    await page.waitForFunction(
      () =>
        /With the previous stock, [\d.]+\s?% of days would be safe/.test(
          document.querySelector('.changed')?.textContent ?? '',
        ),
      null,
    );
    await page.getByRole('button', { name: 'Undo' }).click();
    await certified(page);
    expect(await page.locator('[data-part=lead]').innerText()).toBe(lead);
    expect(await page.locator('.changed').count()).toBe(0);
    expect(faults).toEqual([]);
    // Three answers one after the other.
  }, 180_000);

  it('too large to work out soon can be cancelled', async () => {
    const { page } = letter.now;
    const lead = await page.locator('[data-part=lead]').innerText();
    // The most guests an hour that a day may have in all: more are refused at once.
    await type(page, GUESTS, '20000');
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.waitForSelector('.status[data-phase=as-sent]');
    expect(await page.locator('[data-part=lead]').innerText()).toBe(lead);
    expect(await page.inputValue(GUESTS)).toBe('64 / h');
  });

  it('that will not do is said at its box', async () => {
    const { page, faults } = letter.now;
    const lead = await page.locator('[data-part=lead]').innerText();
    for (const [box, wrong] of [
      ['#machines', 'abc'],
      ['#machines', '0'],
      ['#machines', '99'],
      ['#box-level', '100 %'],
      ['#box-level', '0 %'],
      ['#box-stay', 'long'],
    ] as const) {
      await type(page, box, wrong);
      await page.waitForSelector(`${box}[aria-invalid=true]`);
      expect(await page.locator(`${box}-problem`).innerText(), wrong).toMatch(/^Type (?:a|one) /);
    }
    expect(await page.locator('[data-part=lead]').innerText()).toBe(lead);
    await type(page, '#box-level', '0.9');
    await certified(page);
    expect((await saved(page, 'Save the scenario')).bytes.toString('utf8')).toMatch(/level: 90 %/);
    expect(faults).toEqual([]);
  });

  it('is kept as an alternative of the house as it was', async () => {
    const { page, faults } = letter.now;
    const lead = await page.locator('[data-part=lead]').innerText();
    await type(page, SEATS, '20');
    await certified(page);
    await page.getByRole('button', { name: 'Keep as an alternative' }).click();
    await certified(page);
    expect(await page.locator('[data-part=lead]').innerText()).toBe(lead);
    const text = (await saved(page, 'Save the scenario')).bytes.toString('utf8');
    expect(text).toMatch(/change: \{ "?seats\.count"?: 20 \}/);
    expect(text).toMatch(/count: (?:\{ value: )?26/);
    expect(faults).toEqual([]);
  });

  it('is asked about before it is lost', async () => {
    const { page } = letter.now;
    await type(page, SEATS, '21');
    await certified(page);
    expect(await asksOnLeaving(page)).toBe(true);
    await saved(page, 'Save this letter');
    expect(await asksOnLeaving(page)).toBe(false);
  });

  it('in other units is none: the answer stays certified and no day is run', async () => {
    const { page } = letter.now;
    const [lead, given] = [
      await page.locator('[data-part=lead]').innerText(),
      await page.locator('.status').getAttribute('data-phase'),
    ];
    const phases = page.evaluate(
      () =>
        new Promise<string[]>((resolve) => {
          const seen: string[] = [];
          const status = document.querySelector('[data-island=status]')!;
          new MutationObserver(() =>
            seen.push(status.querySelector<HTMLElement>('.status')?.dataset['phase'] ?? ''),
          ).observe(status, { subtree: true, attributes: true, childList: true });
          setTimeout(() => resolve(seen), 2_000);
        }),
    );
    await page.locator('header details').evaluate((one: HTMLDetailsElement) => (one.open = true));
    await page.selectOption('#look-units', 'us');
    expect(await phases).not.toContain('provisional');
    expect(await page.locator('[data-part=lead]').innerText()).toBe(lead);
    await page.waitForSelector(`.status[data-phase=${given}]`);
  });
});

describe('what leaves the page', () => {
  it('waits for the certified answer, is named after house and day, and says it on paper meanwhile', async () => {
    const { page, close } = await openLetter(browser, letterPath('1-commuter-bar.html'));
    await type(page, SEATS, '18');
    await provisional(page);
    expect(await page.title()).toMatch(/^PROVISIONAL/);
    const mark = await page
      .locator('[data-part=lead]')
      .evaluate((lead) => getComputedStyle(lead, '::before').content);
    expect(mark).toContain('PROVISIONAL');
    expect(await page.locator('[data-part=method]').innerText()).toContain('200');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save this letter' }).click(),
    ]);
    expect(await page.getAttribute('.status', 'data-phase')).toBe('certified');
    expect(download.suggestedFilename()).toMatch(/^tern-tide-\d{4}-\d\d-\d\d\.html$/);
    const html = (await bytesOf(download)).toString('utf8');
    expect(html).not.toMatch(/<title>PROVISIONAL/);
    expect(/<section data-part="method">.*?<\/section>/s.exec(html)?.[0]).not.toContain(
      'on 200 simulated days',
    );
    await close();
  });
});

describe('where the letter cannot wake', () => {
  it('says so', async () => {
    const context = await browser.newContext();
    await context.addInitScript(() => {
      Reflect.deleteProperty(window, 'DecompressionStream');
    });
    const page = await context.newPage();
    await page.goto(`file://${letterPath('short.html')}`);
    await page.locator('#asleep').waitFor({ state: 'visible' });
    await context.close();
    const plain = await browser.newContext({ javaScriptEnabled: false });
    const still = await plain.newPage();
    await still.goto(`file://${letterPath('short.html')}`);
    expect(await still.locator('noscript').first().innerText()).toMatch(/can be read as it is/);
    await plain.close();
  });
});
