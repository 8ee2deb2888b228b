/** What an owner and a consultant come for, each from the first screen to the end; a trainer's way is in boxes.test.ts. */
import type { Browser, JSHandle, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchHere, letterPath, openLetter } from './letter.js';
import { pagesOf } from './pdf.js';

let browser: Browser;
beforeAll(async () => {
  browser = await launchHere();
});
afterAll(() => browser.close());

/** Captions that the section shows from now on, each with how many rows its table has. */
const captionsShown = (
  page: Page,
  section: string,
): Promise<JSHandle<(readonly [string, number])[]>> =>
  page.locator(section).evaluateHandle((place) => {
    const shown: (readonly [string, number])[] = [];
    new MutationObserver(() => {
      const table = place.querySelector('table');
      if (table !== null)
        shown.push([table.caption?.textContent ?? '', table.tBodies[0]!.rows.length]);
    }).observe(place, { subtree: true, childList: true });
    return shown;
  });

/** The folded group of inputs of that name, unfolded. */
async function unfolded(page: Page, name: string): Promise<Locator> {
  const group = page
    .locator('#all-inputs details.ask')
    // Beside the name the summary may count what is assumed.
    .filter({ has: page.locator('> summary', { hasText: new RegExp(`^${name}`) }) });
  await group.locator('> summary').click();
  return group;
}

const thing = (group: Locator, name: string): Locator =>
  group.locator('details.thing > summary', { hasText: name });

describe('the owner', () => {
  it('reads the verdict on another machine one click from the first screen, and holds two letters beside each other', async () => {
    const { page, faults, close } = await openLetter(browser, letterPath('short.html'), {
      viewport: { width: 1200, height: 800 },
    });
    const question = page.locator('#ask-alternatives > summary');
    const box = (await question.boundingBox())!;
    expect(box.y + box.height).toBeLessThanOrEqual(800);
    const captions = await captionsShown(page, '#ask-alternatives');
    await question.click();
    await page.locator('#ask-alternatives').getByText('Money from today').first().waitFor();
    // Its rows came one by one while the rest was worked out.
    const early = (await captions.jsonValue()).filter(([caption]) => caption.startsWith('So far'));
    expect(early[0]?.[1]).toBe(1);
    expect(early.at(-1)?.[1]).toBe(4);
    const told = await page.locator('#ask-alternatives').innerText();
    expect(told).toMatch(/Second machine: (?:saves|needs|takes|changes)/);
    expect(told).toMatch(/Cash over 8 years/);
    expect(told).not.toContain('So far');
    // Two letters beside each other: pieces, money and what was put in.
    await page.setInputFiles('#beside-letters', [
      letterPath('short.html'),
      letterPath('2-brunch-room.html'),
    ]);
    await page.waitForSelector('.beside-letters table >> nth=1');
    const rows = await page.locator('.beside-letters tbody tr').allInnerTexts();
    expect(rows.find((row) => row.startsWith('Cost of all pieces'))).toMatch(/€.*\$/s);
    expect(rows.find((row) => row.startsWith('Seats\t'))).toMatch(/26\s+96/);
    await page.setInputFiles('#beside-letters', [letterPath('short.json')]);
    await page.getByText('Choose two letters that were saved here').waitFor();
    expect(faults).toEqual([]);
    await close();
  }, 180_000);
});

describe('the consultant', () => {
  it('makes a house with two suppliers and two alternatives without a line of YAML, and prints the order', async () => {
    const { page, faults, close } = await openLetter(browser, letterPath('blank.html#consultant'));
    await page.fill('#start-name', 'Heron House');
    await page.fill('#start-seats', '50');
    await page.fill('#start-menu', 'flat white');
    await page.getByRole('button', { name: 'Write the letter' }).click();
    await page.waitForSelector('[data-part=figures] .total');
    await page.click('#all-inputs > summary');
    const supply = await unfolded(page, 'Supply');
    const suppliers = { 'Quay Tableware': ['7 days', '4.20'], 'Hill China': ['21', '3.90'] };
    for (const [name, [days]] of Object.entries(suppliers)) {
      await supply.getByLabel('Its name').fill(name);
      await supply.getByLabel('Time from order to delivery').last().fill(days!);
      await supply.getByRole('button', { name: 'Add a supplier' }).click();
      await thing(supply, name).waitFor();
    }
    for (const [name, [, price]] of Object.entries(suppliers)) {
      await thing(supply, name).click();
      const own = supply
        .locator('details.thing')
        .filter({ has: page.locator('summary', { hasText: name }) });
      await own.getByLabel('For', { exact: true }).waitFor();
      for (
        let left = await own.getByLabel('For', { exact: true }).locator('option').count();
        left > 0;
        left -= 1
      ) {
        await own
          .getByLabel(/^Price of a piece/)
          .last()
          .fill(price!);
        await own
          .getByLabel(/^Pieces in a carton/)
          .last()
          .fill('12');
        await own.getByRole('button', { name: 'Add a quote', exact: true }).click();
        await expect
          .poll(() => own.getByLabel('For', { exact: true }).locator('option').count())
          .toBe(left - 1);
      }
    }
    const others = await unfolded(page, 'What could be different');
    const changes = [
      ['Second dishwasher', 'washing.machines[1]', 'undercounter'],
      ['Clear sooner', 'clearing.every', 'about 6 min'],
    ] as const;
    for (const [name, place, value] of changes) {
      await others.getByLabel('Its name').fill(name);
      await others.getByLabel('What changes').last().selectOption(place);
      const box = others.getByLabel('New value');
      if (name === 'Second dishwasher') await box.selectOption(value);
      else await box.fill(value);
      await others.getByRole('button', { name: 'Add', exact: true }).click();
      await thing(others, name).waitFor();
    }
    await page.click('#ask-order > summary');
    await page.waitForSelector('#ask-order table');
    const pages = pagesOf(await page.pdf({ format: 'A4' }));
    const text = pages.map((one) => one.text).join('\n');
    expect(pages[0]!.text).toContain('Heron House Page 1 of');
    expect(text).toMatch(/Order \d+ pieces for €/);
    for (const [name] of Object.entries(suppliers)) expect(text).toContain(`${name} alone`);
    expect(faults).toEqual([]);
    await close();
  }, 400_000);
});

describe('work on a letter', () => {
  it('is kept by the browser, offered again, and dropped when it is not wanted', async () => {
    const { page, close } = await openLetter(browser, letterPath('short.html'));
    await page.fill('[id="lead-seats.count"]', '21');
    await page.press('[id="lead-seats.count"]', 'Enter');
    await page.waitForFunction(() => localStorage.length > 0, null);
    /** The same letter, opened anew. */
    const again = async (): Promise<Page> => {
      const next = await page.context().newPage();
      await next.goto(page.url());
      await next.waitForSelector('html[data-ready]', { state: 'attached' });
      return next;
    };
    const second = await again();
    await second.getByRole('button', { name: 'Continue with them' }).click();
    await second.waitForFunction(
      () => document.querySelector<HTMLInputElement>('[id="lead-seats.count"]')?.value === '21',
      null,
    );
    const third = await again();
    await third.getByRole('button', { name: 'Discard them' }).click();
    await third.reload();
    await third.waitForSelector('html[data-ready]', { state: 'attached' });
    expect(await third.locator('#restore').count()).toBe(0);
    await close();
  }, 120_000);
});
