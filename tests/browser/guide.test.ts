/** The planning guide on paper: one page, whatever the paper and however much there is to say. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cuptide, emptyFolder } from '../cli/run.js';
import { hostileScenario } from './hostile.js';
import { bytesOf, launchHere, letterPath, openLetter } from './letter.js';
import { pagesOf } from './pdf.js';

let browser: Browser;
beforeAll(async () => {
  browser = await launchHere();
});
afterAll(() => browser.close());

/** A house with many kinds of ware and drinks, all with long names. */
function crowded(): string {
  const kinds = Array.from({ length: 24 }, (_, index) => index + 1);
  const long = (what: string, index: number): string =>
    `${what} number ${index} with a name that is far longer than any shelf label`;
  return `name: ${'A house with everything '.repeat(8)}
currency: EUR
staffHour: 20 EUR
hours: { from: "07:00", to: "08:00" }
arrivals: { slots: { every: 30 min, parties: [9, 9] } }
guests: { staysIn: 50 % }
menu:
${kinds.map((n) => `  drink-${n}: { name: ${long('Drink', n)}, share: ${n < 24 ? 4 : 8} %, setting: [cup-${n}, saucer, spoon] }`).join('\n')}
ware:
${kinds.map((n) => `  cup-${n}: { like: medium-cup, name: ${long('Cup', n)}, price: 5 EUR }`).join('\n')}
  saucer: { like: saucer, name: ${long('Saucer', 1)} }
  spoon: { like: teaspoon }
seats: { count: 40 }
washing: { machines: [{ class: undercounter }] }
`;
}

/** Scenario, what is asked, and the least size of type in points that it must have. */
const houses: readonly (readonly [string, string, readonly string[], number])[] = [
  [
    'the demo at eight houses',
    'scenarios/1-commuter-bar.yaml',
    ['--seats', '20,30,50,80', '--takeaway', '30,60'],
    6.5,
  ],
  ['the demo as it is', 'scenarios/1-commuter-bar.yaml', [], 6.5],
  ['the brunch room', 'scenarios/2-brunch-room.yaml', [], 6.5],
  [
    'the great hall at eight houses',
    'scenarios/3-great-hall.yaml',
    ['--seats', '50,60,70,80', '--takeaway', '10,30'],
    5.5,
  ],
  ['hostile names', hostileScenario(), ['--seats', '5,10,20,30,40,50,60,70'], 4],
  ['a crowd of ware', crowded(), ['--seats', '10,20,30,40,50,60,70,80'], 4],
  ['one house', 'scenarios/4-bakery-corner.yaml', ['--seats', '30'], 6.5],
];

describe.each(houses)('the guide of %s', (_, source, options, least) => {
  const folder = emptyFolder();
  let path: string;
  beforeAll(() => {
    const file = join(folder, 'house.yaml');
    writeFileSync(file, source.startsWith('scenarios/') ? readFileSync(source) : source);
    const { status, err } = cuptide(['guide', file, ...options, '--days', '30', '--out', folder]);
    expect(status, err).toBe(0);
    path = join(folder, 'house.guide.html');
  }, 120_000);

  it.each(['A4', 'Letter'] as const)('prints on one page of %s, and all of it', async (format) => {
    const page = await browser.newPage();
    const faults: string[] = [];
    page.on('console', (message) => faults.push(message.text()));
    page.on('request', (request) => {
      if (!/^(file|data):/.test(request.url())) faults.push(request.url());
    });
    await page.goto(pathToFileURL(path).href);
    const pages = pagesOf(await page.pdf({ format }));
    const size = await page.evaluate(() => parseFloat(getComputedStyle(document.body).fontSize));
    await page.close();
    expect(faults).toEqual([]);
    expect(pages.length).toBe(1);
    const { text } = pages[0]!;
    for (const part of [
      'Planning guide',
      'Which vessel for which drink',
      'What to change if',
      'How this was made',
      'Scalds',
      'it is not a guarantee',
    ])
      expect(text).toContain(part);
    expect((size * 72) / 96).toBeGreaterThanOrEqual(least);
  });
});

describe('the guide in the letter', () => {
  it('takes sizes and shares that are typed, says what will not do, and is saved; a long wait can be given up', async () => {
    const { page, faults, close } = await openLetter(browser, letterPath('short.html'));
    const guide = page.locator('#ask-guide');
    await page.locator('#ask-guide-seats').evaluate((box) => {
      box.closest('details')!.open = true;
    });
    await guide.locator('table').first().waitFor();
    await page.locator('#ask-guide-seats').fill('20, 20');
    await page.locator('#ask-guide-seats').press('Enter');
    await guide.locator('[role=alert]', { hasText: '"20" is given twice' }).waitFor();
    await page.locator('#ask-guide-seats').fill('14, 20');
    await page.locator('#ask-guide-takeaway').fill('30');
    await page.locator('#ask-guide-takeaway').press('Enter');
    await guide.getByText('14 seats').first().waitFor();
    expect(await guide.locator('[role=alert]').count()).toBe(0);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      guide.getByRole('button', { name: 'Save the figures as CSV' }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/\.guide\.csv$/);
    expect((await bytesOf(download)).toString()).toMatch(/^14,/m);

    // A long wait says what is left, and can be given up: what is asked next is answered all the same.
    const long = page.locator('#ask-alternatives');
    await long.evaluate((fold: HTMLDetailsElement) => (fold.open = true));
    await long.getByText(/of up to [\d,]+ days/).waitFor();
    await long.getByRole('button', { name: 'Cancel' }).click();
    expect(await long.evaluate((fold: HTMLDetailsElement) => fold.open)).toBe(false);
    await page.locator('#ask-guide-seats').fill('15');
    await page.locator('#ask-guide-seats').press('Enter');
    await guide.getByText('15 seats').first().waitFor();
    expect(faults).toEqual([]);
    await close();
  }, 120_000);
});
