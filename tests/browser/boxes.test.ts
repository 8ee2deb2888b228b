/** The boxes, the forms and the cards of the page: what is typed reaches the scenario, its answer and the paper. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cuptide, emptyFolder } from '../cli/run.js';
import {
  certified,
  launchHere,
  letterPath,
  letterText,
  openLetter,
  saved,
  type Letter,
} from './letter.js';
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

/** Seats and dishwashers of the scenario as it stands; one more machine stands in an alternative. */
async function seatsAndMachines(page: Page): Promise<[string | undefined, number]> {
  const text = await scenarioOf(page);
  return [/count: (\d+)/.exec(text)?.[1], (text.match(/class: undercounter/g)?.length ?? 0) - 1];
}

/** What is asked of the engines waits until all this is done: a machine as slow as can be. */
async function withEnginesHeld(page: Page, act: () => Promise<void>): Promise<void> {
  await page.evaluate(() => {
    const { postMessage } = Worker.prototype;
    const held: (() => void)[] = [];
    Worker.prototype.postMessage = function (...message: unknown[]) {
      held.push(() => postMessage.apply(this, message as [unknown]));
    };
    const letGo = (): void => {
      Worker.prototype.postMessage = postMessage;
      for (const send of held) send();
    };
    Object.assign(window, { letGo });
  });
  await act();
  await page.evaluate(() => (window as unknown as { letGo(): void }).letGo());
}

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

/** One letter, on which one change follows the other. */
describe('a change in a box', () => {
  let letter: Letter;
  let page: Page;
  let sent: Record<string, string>;
  beforeAll(async () => {
    letter = await openLetter(browser, letterPath('short.html'));
    ({ page } = letter);
    sent = await said(page);
  });
  afterAll(() => letter.close());

  it('changes the scenario in one place, and the answer is the terminal’s for the file that is saved', async () => {
    expect(sent['findings']).toContain('<li>');
    const seats = '[id="lead-seats.count"]';
    expect(await page.getAttribute(seats, 'type')).toBe('text');
    const stay = await page.inputValue('#box-stay');
    await page.click('#pieces > summary');
    await page.locator('#pieces input').first().fill('');
    await withEnginesHeld(page, async () => {
      // The newest of a box counts, whether it is sent by Enter or by leaving the box, and stands there until it is taken.
      await type(page, seats, '40');
      await type(page, '#machines', '3');
      await type(page, '#box-stay', '30');
      await page.fill(seats, '18');
      await page.press(seats, 'Tab');
      await page.fill('#machines', '2');
      await page.fill('#box-stay', stay);
      await page.focus('#box-level');
      expect(await page.inputValue(seats)).toBe('18');
      expect(await page.inputValue('#machines')).toBe('2');
    });
    expect(await seatsAndMachines(page)).toEqual(['18', 2]);
    await certified(page);
    // A box of one's own stock that was emptied is not filled by an answer that comes.
    expect(await page.locator('#pieces input').first().inputValue()).toBe('');
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
    expect((await said(page))['pictures']).not.toBe(sent['pictures']);
  });

  it('and back again: the letter says, part by part, what it said as it was sent', async () => {
    await page.getByRole('button', { name: 'Back to the letter as sent' }).click();
    await certified(page);
    const back = await said(page);
    for (const [part, html] of Object.entries(sent)) expect(back[part], part).toBe(html);
    expect(await page.getByRole('button', { name: 'Back to the letter as sent' }).count()).toBe(0);
    expect(await page.getAttribute('.status', 'data-phase')).toBe('as-sent');
  });

  it('that will not do is named beside the box, the answer stays, and what is put right is taken', async () => {
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
    // Typed to and back, the file is as it was to the last sign.
    const before = await scenarioOf(page);
    for (const [seats, machines] of [
      ['18', '2'],
      ['26', '1'],
    ] as const) {
      await type(page, '[id="lead-seats.count"]', seats);
      await type(page, '#machines', machines);
      await expect.poll(() => seatsAndMachines(page)).toEqual([seats, Number(machines)]);
    }
    expect((await scenarioOf(page)).trimEnd()).toBe(before.trimEnd());
  });

  it('of all inputs, which stand by group, reaches the whole file as text', async () => {
    await page.click('#all-inputs > summary');
    const groups = page.locator('#all-inputs details.ask > summary');
    expect(await groups.count()).toBeGreaterThan(8);
    await groups.filter({ hasText: 'Counter' }).first().click();
    const makers = page
      .locator('#all-inputs')
      .getByLabel('People making drinks', { exact: false })
      .first();
    await groups.filter({ hasText: 'Guests' }).first().click();
    const [mean, spread] = ['', '-sd'].map((part) =>
      page.locator(`[id="all-guests.dwell.bySize.1${part}"]`),
    );
    await withEnginesHeld(page, async () => {
      await makers.fill('3');
      await makers.press('Enter');
      await mean!.fill('31 min');
      await mean!.press('Tab');
      await spread!.fill('11 min');
      await spread!.press('Tab');
      expect(await mean!.inputValue()).toBe('31 min');
    });
    await page.click('#whole-file > summary');
    // What is saved waits for what was typed.
    const text = await scenarioOf(page);
    expect(text).toContain('  makers: 3');
    expect(text).toMatch(/mean: "?31 min"?, sd: "?11 min/);
    expect(await page.inputValue('#scenario-text')).toBe(text);
    expect(letter.faults).toEqual([]);
  });
});

describe('the cards', () => {
  it('explain the shape of the stock by this house, and print a page each on either paper', async () => {
    const { page, faults, close } = await openLetter(browser, letterPath('short.html#trainer'));
    await page.waitForSelector('.card');
    const cards = await page.locator('.card').count();
    expect(cards).toBeGreaterThanOrEqual(7);
    expect(await page.locator('.card .card-pair').count()).toBe(10);
    expect(await page.locator('[data-part=cards]').innerText()).toMatch(
      /about \d+ racks are washed, on average .*full\. About \d+ full would be enough for the same pieces/s,
    );
    for (const [paper, height] of [
      ['a4', 842],
      ['letter', 792],
    ] as const) {
      await page.selectOption('#paper', paper);
      await page.waitForSelector(`body[data-paper=${paper}]`);
      await page.evaluate(() => (document.body.dataset['print'] = 'cards'));
      const pages = pagesOf(await page.pdf({ preferCSSPageSize: true }));
      expect(pages, paper).toHaveLength(cards);
      for (const one of pages) {
        expect(Math.abs(one.height - height)).toBeLessThan(1.5);
        expect(one.text).toContain('Tern & Tide');
      }
    }
    expect(faults).toEqual([]);
    await close();
  });
});
