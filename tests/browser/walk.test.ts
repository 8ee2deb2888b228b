/** A walk through a day on the floor: it runs, stops, steps and jumps, and shows where fewer pieces break it. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchHere, letterPath, openLetter, type Letter } from './letter.js';

let browser: Browser;
beforeAll(async () => {
  browser = await launchHere();
});
afterAll(() => browser.close());

const told = (page: Page): Promise<string> => page.locator('.walk-tell').innerText();
const press = (page: Page, name: string | RegExp): Promise<void> =>
  page.locator('#walk').getByRole('button', { name }).click();
/** Minutes of the day that the walk says it is. */
const minute = async (page: Page): Promise<number> => {
  const [, hours, minutes] = /(\d\d):(\d\d)/.exec(await told(page))!;
  return Number(hours) * 60 + Number(minutes);
};

async function openWalk(page: Page): Promise<void> {
  await page.click('#walk > summary');
  await page.waitForSelector('.walk-tell');
}

describe('a walk through a day', () => {
  let letter: Letter;
  beforeAll(async () => {
    letter = await openLetter(browser, letterPath('short.html'));
    await openWalk(letter.page);
  });
  afterAll(() => letter.close());

  it('opens at the tightest moment that the letter tells of, and steps from there and back', async () => {
    const { page, faults } = letter;
    const tightest = /moment is (\d\d:\d\d)/.exec(
      await page.locator('[data-part=rush] .keep').innerText(),
    )![1]!;
    const there = await told(page);
    expect(there).toContain(tightest);
    for (let step = 0; step < 12; step += 1) await press(page, 'Step forward');
    expect(await told(page)).not.toBe(there);
    for (let step = 0; step < 12; step += 1) await press(page, 'Step back');
    expect(await told(page)).toBe(there);
    for (let step = 0; step < 12; step += 1) await press(page, 'Step forward');
    await press(page, /^Tightest moment/);
    expect(await told(page)).toBe(there);
    expect(faults).toEqual([]);
  });

  it('plays until it is stopped', async () => {
    const { page } = letter;
    const started = await minute(page);
    await page
      .locator('#walk')
      .getByLabel('Speed')
      .selectOption({ label: '5 min of the day per second' });
    await press(page, 'Play');
    await expect.poll(() => minute(page)).toBeGreaterThan(started + 3);
    await press(page, 'Stop');
    await page.locator('#walk').getByRole('button', { name: 'Play' }).waitFor();
    const stopped = await told(page);
    await page.waitForTimeout(400);
    expect(await told(page)).toBe(stopped);
  });

  it('keeps every piece: at each moment the places add up to the stock', async () => {
    const { page } = letter;
    const stock = await page
      .locator('#pieces input')
      .evaluateAll((boxes) => boxes.map((box) => Number((box as HTMLInputElement).value)));
    await press(page, /^Tightest moment/);
    await page.locator('#walk summary', { hasText: 'This moment in figures' }).click();
    const lines = page
      .locator('#walk table', { hasText: 'Pieces by item and place' })
      .locator('tbody tr');
    await lines.first().waitFor();
    const seen = new Set<string>();
    for (let step = 0; step < 15; step += 1) {
      const rows = await lines.evaluateAll((all) =>
        all.map((line) => [...line.querySelectorAll('td')].map((cell) => Number(cell.textContent))),
      );
      const sums = rows.map((row) => row.slice(0, -1).reduce((sum, pieces) => sum + pieces, 0));
      expect(sums.slice(0, stock.length)).toEqual(stock);
      expect(rows.map((row) => row.at(-1)).slice(0, stock.length)).toEqual(stock);
      seen.add(JSON.stringify(rows));
      await press(page, 'Step forward');
    }
    expect(seen.size).toBeGreaterThan(3);
  });

  it('with ten pieces fewer it shows where the day breaks: the first shortage, of that item, with none on the shelf', async () => {
    const { page, faults } = letter;
    const walk = page.locator('#walk');
    expect(await walk.getByText('Nothing runs out on this day').count()).toBe(1);
    const ten = walk.getByRole('button', { name: /^Ten fewer of the item/ });
    const item = (await ten.innerText()).split(': ')[1]!;
    const owned = (): Promise<number> =>
      walk
        .locator('table', { hasText: 'Pieces by item and place' })
        .locator('tbody tr', { hasText: item })
        .locator('td')
        .last()
        .textContent()
        .then(Number);
    await walk
      .locator('details', { hasText: 'This moment in figures' })
      .last()
      .evaluate((fold: HTMLDetailsElement) => {
        fold.open = true;
      });
    const before = await owned();
    await ten.click();
    await walk.getByRole('button', { name: 'First shortage' }).waitFor();
    expect(await told(page)).toMatch(/lacks its ware|Drinks short so far: 1/);
    expect(await told(page)).toContain(item);
    expect(await owned()).toBe(before - 10);
    await press(page, 'Put all pieces back');
    await walk.getByText('Nothing runs out on this day').waitFor();
    expect(faults).toEqual([]);
  });

  it('moves nothing by itself for those who ask for less motion', async () => {
    const { page, close } = await openLetter(browser, letterPath('short.html#trainer'), {
      reducedMotion: 'reduce',
    });
    await page.waitForSelector('.walk-tell');
    expect(await page.locator('#walk').getByRole('button', { name: 'Play' }).count()).toBe(0);
    expect(await page.locator('#walk').innerText()).toContain('set to reduce motion');
    const before = await told(page);
    await page.waitForTimeout(400);
    expect(await told(page)).toBe(before);
    expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
    await press(page, 'Step forward');
    await close();
  });
});
