/** A morning's sheet typed into the page: mistakes at their boxes change nothing, what is right becomes measured, undo takes it back. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { valid } from '../scenario/a-scenario.js';
import { certified, launchHere, letterPath, openLetter, saved, type Letter } from './letter.js';

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
    expect(await text(letter)).toBe(valid);

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
    await expect.poll(() => text(letter)).toBe(valid);
    await page.waitForFunction(() => document.querySelector('[data-older]') === null);
    expect(faults).toEqual([]);
    await close();
  });
});
