/** The boxes, the forms and the cards of the page: what is typed reaches the scenario, its answer and the paper. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cuptide, emptyFolder } from '../cli/run.js';
import { certified, launchHere, letterPath, letterText, openLetter, saved } from './letter.js';
import { pagesOf } from './pdf.js';

let browser: Browser;
/** The scenario of the letter under test. */
let demo: string;
beforeAll(async () => {
  browser = await launchHere();
  demo = await letterText('short.yaml');
});
afterAll(() => browser.close());

const scenarioOf = async (page: Page): Promise<string> =>
  (await saved(page, 'Save the scenario')).bytes.toString('utf8');

async function type(page: Page, box: string, text: string): Promise<void> {
  await page.fill(box, text);
  await page.press(box, 'Enter');
}

describe('the boxes under the sentence', () => {
  it('change the scenario in one place, and the answer is the terminal’s for the file that is saved', async () => {
    const { page, faults, close } = await openLetter(browser, letterPath('short.html'));
    const boxes = page.locator('[data-island=boxes]');
    const seats = `[id="${await boxes.getByLabel('Seats', { exact: true }).getAttribute('id')}"]`;
    await type(page, seats, '18');
    await certified(page);
    await type(page, '#machines', '2');
    await certified(page);
    const text = await scenarioOf(page);
    expect(text).toContain('  count: 18');
    expect(text.match(/class: undercounter/g)).toHaveLength(3);
    expect(text).toContain('# how much whole days differ');
    const file = join(emptyFolder(), 'mine.yaml');
    writeFileSync(file, text);
    const { out } = cuptide(['size', file, '--json', '--days', '200']);
    const answer = JSON.parse(
      (await saved(page, 'Save the answer (JSON)')).bytes.toString('utf8'),
    ) as Record<string, unknown>;
    const terminal = JSON.parse(out) as Record<string, unknown>;
    for (const key of ['stock', 'certified', 'days', 'cost', 'busy'])
      expect(answer[key], key).toEqual(terminal[key]);
    await type(page, '#machines', '1');
    await certified(page);
    await type(page, seats, '26');
    await certified(page);
    expect((await scenarioOf(page)).replace(/\s+$/, '')).toBe(demo.replace(/\s+$/, ''));
    expect(faults).toEqual([]);
    await close();
  });

  it('say beside the box what will not do, keep the answer, and take what is put right', async () => {
    const { page, faults, close } = await openLetter(browser, letterPath('short.html'));
    const boxes = page.locator('[data-island=boxes]');
    const id = await boxes.getByLabel('Tables cleared every', { exact: true }).getAttribute('id');
    const every = `[id="${id}"]`;
    const lead = await page.textContent('[data-part=lead]');
    await type(page, every, 'soon');
    await page.waitForSelector(`${every}[aria-invalid=true]`);
    expect(await page.textContent(`[id="${id}-problem"]`)).toMatch(/soon/);
    expect(await page.textContent('[data-part=lead]')).toBe(lead);
    expect(await scenarioOf(page)).toBe(demo);
    await type(page, every, '5 min');
    await certified(page);
    expect(await page.getAttribute(every, 'aria-invalid')).toBe('false');
    expect(await page.textContent('[data-part=lead]')).not.toBe(lead);
    expect(await scenarioOf(page)).toMatch(
      /every: \{ value: about 5 min, basis: assumed, range: \[about 5 min, about 15 min\] \}/,
    );
    expect(faults).toEqual([]);
    await close();
  });
});

describe('the letter as a whole', () => {
  /** What each part says, without what the page adds under pictures. */
  const said = (page: Page): Promise<Record<string, string>> =>
    page.evaluate(() =>
      Object.fromEntries(
        [...document.querySelectorAll('[data-part]')].map((part) => {
          const copy = part.cloneNode(true) as HTMLElement;
          for (const tools of copy.querySelectorAll('.tools')) tools.remove();
          return [part.getAttribute('data-part')!, copy.innerHTML.trim()];
        }),
      ),
    );

  it('says after a change and back, part by part, what it said as it was sent', async () => {
    const { page, faults, close } = await openLetter(browser, letterPath('short.html'));
    const sent = await said(page);
    expect(sent['findings']).toContain('<li>');
    await type(page, '#machines', '3');
    await certified(page);
    expect((await said(page))['pictures']).not.toBe(sent['pictures']);
    await page.getByRole('button', { name: 'Back to the letter as sent' }).click();
    await certified(page);
    const back = await said(page);
    for (const [part, html] of Object.entries(sent)) expect(back[part], part).toBe(html);
    expect(await page.getByRole('button', { name: 'Back to the letter as sent' }).count()).toBe(0);
    expect(await page.getAttribute('.status', 'data-phase')).toBe('as-sent');
    expect(faults).toEqual([]);
    await close();
  });
});

describe('all inputs', () => {
  it('stand in boxes by group, and the whole file as text', async () => {
    const { page, faults, close } = await openLetter(browser, letterPath('short.html'));
    await page.click('#all-inputs > summary');
    const groups = page.locator('#all-inputs details.ask > summary');
    expect(await groups.count()).toBeGreaterThan(8);
    await groups.filter({ hasText: 'Counter' }).first().click();
    const makers = page
      .locator('#all-inputs')
      .getByLabel('People making drinks', { exact: false })
      .first();
    await makers.fill('3');
    await makers.press('Enter');
    await certified(page);
    expect(await scenarioOf(page)).toContain('  makers: 3');
    await page.click('#whole-file > summary');
    expect(await page.inputValue('#scenario-text')).toContain('  makers: 3');
    expect(faults).toEqual([]);
    await close();
  });
});

describe('the cards', () => {
  it.each([
    ['a4', 842],
    ['letter', 792],
  ] as const)('print a page each on %s', async (paper, height) => {
    const { page, faults, close } = await openLetter(browser, letterPath('short.html'));
    await page.getByRole('button', { name: 'Show the cards' }).click();
    await page.waitForSelector('.card', { timeout: 40_000 });
    const cards = await page.locator('.card').count();
    expect(cards).toBeGreaterThanOrEqual(5);
    await page.selectOption('#paper', paper);
    await page.waitForSelector(`body[data-paper=${paper}]`);
    await page.evaluate(() => (document.body.dataset['print'] = 'cards'));
    const pages = pagesOf(await page.pdf({ preferCSSPageSize: true }));
    expect(pages).toHaveLength(cards);
    for (const one of pages) {
      expect(Math.abs(one.height - height)).toBeLessThan(1.5);
      expect(one.text).toContain('Tern & Tide');
    }
    expect(faults).toEqual([]);
    await close();
  });
});
