/** What is taken along of a letter can be opened again, here and elsewhere. */
import { unzipSync } from 'fflate';
import { writeFileSync } from 'node:fs';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
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

const lead = (page: Page): Promise<string> => page.locator('[data-part=lead]').innerText();

async function fileOf(page: Page, button: Locator): Promise<Buffer> {
  const [download] = await Promise.all([page.waitForEvent('download'), button.click()]);
  return bytesOf(download);
}

describe('a letter that is saved', () => {
  it('opens with the change, the sender and the reader as they were, and works again', async () => {
    const first = await openLetter(browser, letterPath('short.html'));
    await first.page.getByRole('radio', { name: 'consultant' }).check();
    await first.page.locator('header details > summary').first().click();
    await first.page.fill('#sender-name', 'Kestrel & Daughters <advice>');
    await first.page.setInputFiles('#sender-logo', {
      name: 'torn.png',
      mimeType: 'image/png',
      buffer: Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]),
    });
    await first.page.locator('#logo-wrong', { hasText: 'not a PNG' }).waitFor();
    await first.page.setInputFiles('#sender-logo', {
      name: 'logo.svg',
      mimeType: 'image/svg+xml',
      buffer: Buffer.from(
        '<svg xmlns="http://www.w3.org/2000/svg" width="80" height="40"><rect width="80" height="40" fill="#357"/></svg>',
      ),
    });
    await first.page.locator('.sender img').waitFor();
    await first.page.click('#pieces > summary');
    await first.page.fill('#pieces-medium-cup', '40');
    await certified(first.page);
    const told = await lead(first.page);
    const { fileName, bytes } = await saved(first.page, 'Save this letter');
    expect(fileName).toMatch(/^tern-tide-\d{4}-\d\d-\d\d\.html$/);
    expect(first.faults).toEqual([]);
    await first.close();

    const path = `${inject('letters')}/saved.html`;
    writeFileSync(path, bytes);
    const second = await openLetter(browser, path);
    expect(await lead(second.page)).toBe(told);
    expect(await second.page.getByRole('radio', { name: 'consultant' }).isChecked()).toBe(true);
    expect(await second.page.locator('.sender').innerText()).toBe('Kestrel & Daughters <advice>');
    expect(
      await second.page
        .locator('.sender img')
        .evaluate((image: HTMLImageElement) => image.decode().then(() => image.naturalWidth)),
    ).toBe(80);
    expect(await second.page.locator('#pieces-medium-cup').inputValue()).toBe('40');
    await second.page.click('#pieces > summary');
    await second.page.fill('#pieces-medium-cup', '20');
    await certified(second.page);
    expect(await lead(second.page)).not.toBe(told);
    expect(second.faults).toEqual([]);
    // A copy of a copy holds nothing twice.
    const again = await saved(second.page, 'Save this letter');
    expect(Math.abs(again.bytes.length / bytes.length - 1)).toBeLessThan(0.02);
    await second.close();
  });
});

describe('a scenario that is saved', () => {
  /** A scenario is saved as soon as there is any answer to it. */
  const answered = (page: Page): Promise<unknown> =>
    page.waitForSelector('.status:is([data-phase=provisional], [data-phase=certified])');

  it('is the same text when it was opened and saved again, and is begun from a few answers', async () => {
    const first = await openLetter(browser, letterPath('blank.html'));
    await first.page.fill('#start-name', 'The "Grey" Heron: tea #1');
    await first.page.fill('#start-seats', 'a few');
    await first.page.fill('#start-staffHour', '£14');
    await first.page.getByRole('button', { name: 'Write the letter' }).click();
    expect(await first.page.locator('#start-seats-wrong').innerText()).toMatch(/number of seats/);
    expect(await first.page.evaluate(() => document.activeElement?.id)).toBe('start-seats');
    await first.page.fill('#start-seats', '14');
    await first.page.getByRole('button', { name: 'Write the letter' }).click();
    await answered(first.page);
    expect(await lead(first.page)).toMatch(/^Have \d+/);
    const scenario = await saved(first.page, 'Save the scenario');
    expect(scenario.bytes.toString('utf8')).toContain('count: 14');
    expect(scenario.bytes.toString('utf8')).toContain('currency: GBP');
    // The questions stay, with their answers.
    await first.page.click('#begin-again > summary');
    expect(await first.page.inputValue('#start-seats')).toBe('14');
    expect(first.faults).toEqual([]);
    await first.close();
    const second = await openLetter(browser, letterPath('blank.html'));
    await second.page.setInputFiles('#open-scenario', {
      name: 'mine.yaml',
      mimeType: 'application/yaml',
      buffer: scenario.bytes,
    });
    await answered(second.page);
    expect((await saved(second.page, 'Save the scenario')).bytes.equals(scenario.bytes)).toBe(true);
    await second.close();
  });
});

describe('what is taken along of a letter', () => {
  let letter: Letter;
  let page: Page;
  beforeAll(async () => {
    letter = await openLetter(browser, letterPath('short.html'));
    ({ page } = letter);
  });
  afterAll(() => letter.close());

  it('a picture: a drawing on its own, dots twice as fine, and a table of as many lines as it has', async () => {
    const section = page.locator('[data-part=pictures] section.beside').nth(1);
    await section.locator('details.tools > summary').click();
    const svg = (
      await fileOf(page, section.getByRole('button', { name: /^Save as SVG/ }))
    ).toString('utf8');
    const png = await fileOf(page, section.getByRole('button', { name: /^Save as PNG/ }));
    const csv = (await fileOf(page, section.getByRole('button', { name: /CSV/ }))).toString('utf8');

    // Read as a file of its own, by the browser's XML reader.
    const drawing = await page.evaluate((text) => {
      const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
      const root = parsed.documentElement;
      return {
        wrong: parsed.querySelector('parsererror') !== null,
        name: root.localName,
        space: root.namespaceURI,
        size: [root.getAttribute('width'), root.getAttribute('height')].map(Number),
        shapes: parsed.querySelectorAll('path,rect,line').length,
      };
    }, svg);
    expect(drawing).toMatchObject({
      wrong: false,
      name: 'svg',
      space: 'http://www.w3.org/2000/svg',
    });
    expect(drawing.shapes).toBeGreaterThan(5);

    // PNG (ISO/IEC 15948): signature, then the header with width and height as four bytes each.
    expect([...png.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    expect(png.toString('latin1', 12, 16)).toBe('IHDR');
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual(
      drawing.size.map((length) => Math.trunc(length) * 2),
    );
    expect(png.length).toBeGreaterThan(5_000);

    const rows = await section.locator('table tr').count();
    expect(csv.endsWith('\r\n')).toBe(true);
    expect(csv.split('\r\n').length - 1).toBe(rows);
    expect(letter.faults).toEqual([]);
  });

  it('the order sheet: a workbook with the pieces to order', async () => {
    const { fileName, bytes } = await saved(page, 'Save the order sheet (XLSX)');
    expect(fileName).toMatch(/\.xlsx$/);
    const parts = unzipSync(bytes);
    // Parts that every workbook must have (ECMA-376).
    for (const part of ['[Content_Types].xml', 'xl/workbook.xml', 'xl/worksheets/sheet1.xml'])
      expect(Object.keys(parts)).toContain(part);
    const text = Object.values(parts)
      .map((part) => Buffer.from(part).toString('utf8'))
      .join('\n');
    for (const ware of ['Medium cup', 'Saucer', 'Teaspoon']) expect(text).toContain(ware);
    expect(letter.faults).toEqual([]);
  });
});
