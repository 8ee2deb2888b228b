/** What comes from outside into a letter: a morning's sheet typed, other vessels in boxes and a table. All of it stands in the letter that is saved. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { emptyFolder } from '../cli/run.js';
import { certified, launchHere, letterPath, openLetter, saved, type Letter } from './letter.js';
import { small } from './small-house.js';

let browser: Browser;
beforeAll(async () => void (browser = await launchHere()));
afterAll(() => browser.close());

const text = async ({ page }: Letter): Promise<string> =>
  (await saved(page, 'Save the scenario')).bytes.toString('utf8');
const sheetOf = ({ page }: Letter) => {
  const sheet = page.locator('#ask-sheet');
  return { sheet, loading: (row: number) => sheet.locator(`[data-cell="${row}/loading, s"]`) };
};

describe('a sheet in the page', () => {
  it('is typed, put right and read; the scenario that is saved has what was counted', async () => {
    const letter = await openLetter(browser, letterPath('small.html'));
    const { page, faults, close } = letter;
    const { sheet, loading } = sheetOf(letter);
    await sheet.locator('> summary').click();
    await sheet.getByLabel('Day').fill('2026-01-15');
    await sheet.getByText('Loads of the dishwasher').click();
    for (const row of [0, 1, 2, 3, 4]) await loading(row).fill(String(28 + row));
    await loading(5).fill('-3');
    await sheet.getByRole('button', { name: 'Read the sheet' }).click();
    await expect.poll(() => loading(5).getAttribute('aria-invalid')).toBe('true');
    expect(await loading(5).evaluate((box) => box === document.activeElement)).toBe(true);
    const problem = await loading(5).getAttribute('aria-describedby');
    expect(await page.textContent(`[id="${problem}"]`)).toMatch(/-3.* is negative; write 0/);
    expect(await sheet.getByRole('alert').textContent()).toContain('Nothing was changed');
    expect(await text(letter)).toBe(small);

    await loading(5).fill('33');
    await sheet.getByRole('button', { name: 'Read the sheet' }).click();
    await sheet.getByText('What the sheet says').waitFor();
    await certified(page);
    expect(await text(letter)).toMatch(
      /loading: \{.*basis: measured, range: .*source: "sheet of 2026-01-15, 6 /,
    );
    expect(await page.textContent('.changed')).toContain('Undo');
    // The answer of before is still at hand and stands at once: nothing is worked out again.
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => text(letter)).toBe(small);
    await page.waitForFunction(() => document.querySelector('[data-older]') === null);
    expect(faults).toEqual([]);
    await close();
  });
});

const table = `id,name,price,brim,rim,foot,height,handle,mass,colour,carton
one-200,Harbour white,3,200,84,50,64,27,250,white,6
`;

describe('other vessels', () => {
  it('are named in boxes, take a table, and are weighed; they stand in the letter that is saved, as counts do that were not read', async () => {
    const letter = await openLetter(browser, letterPath('small.html'));
    const { page, faults, close } = letter;
    await page.click('#all-inputs > summary');
    const supply = page
      .locator('#all-inputs details.ask')
      .filter({ has: page.locator('summary', { hasText: /^Supply/ }) });
    await supply.locator('> summary').click();
    await supply.getByLabel('Add', { exact: true }).selectOption('a set of vessels to compare');
    await supply.getByLabel('Its name').fill('White');
    await supply.getByLabel('Table of its vessels (CSV file)').fill('white.csv');
    await supply.getByRole('button', { name: 'Add a set of vessels to compare' }).click();
    await supply.getByText('White', { exact: true }).click();
    await supply.getByLabel('Vessel of the table in place of: cup').fill('one-200');
    await page.keyboard.press('Tab');
    const question = page.locator('#ask-collections');
    await question.locator('> summary').click();
    await question.getByText('"white.csv" was not handed over').waitFor();
    const file = join(emptyFolder(), 'white.csv');
    writeFileSync(file, table);
    await question.locator('input[type=file]').setInputFiles(file);
    await question.getByRole('rowheader', { name: 'Harbour white' }).first().waitFor();

    const { sheet, loading } = sheetOf(letter);
    await sheet.locator('> summary').click();
    await sheet.getByText('Loads of the dishwasher').click();
    await loading(0).fill('31');
    const { bytes } = await saved(page, 'Save this letter');
    const scenario = await text(letter);
    expect(scenario).toMatch(/standsFor: \{ "?cup"?: one-200 \}/);
    expect(faults).toEqual([]);
    await close();

    const path = join(emptyFolder(), 'saved.html');
    writeFileSync(path, bytes);
    const again = await openLetter(browser, path);
    // The sheet and its part are open by themselves, as there are counts in them.
    await expect.poll(() => sheetOf(again).loading(0).inputValue()).toBe('31');
    expect(await text(again)).toBe(scenario);
    await again.page.locator('#ask-collections > summary').click();
    await again.page
      .locator('#ask-collections')
      .getByRole('rowheader', { name: 'Harbour white' })
      .first()
      .waitFor();
    expect(again.faults).toEqual([]);
    await again.close();
  });
});
