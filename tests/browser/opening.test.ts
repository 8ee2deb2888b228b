/** The letter opens from disk, quietly, and holds whatever text is in it to be text. */
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { HOSTILE } from './hostile.js';
import { certified, launchHere, letterPath, letterText, openLetter, saved } from './letter.js';

let browser: Browser;
beforeAll(async () => {
  browser = await launchHere();
});
afterAll(() => browser.close());

describe('the browser that the page is tried in', () => {
  // Without this, every check of what the page's policy forbids would be empty.
  it('holds pages to their policy', async () => {
    console.log(`tried in Chromium ${browser.version()}`);
    const path = `${inject('letters')}/broken-into.html`;
    writeFileSync(
      path,
      (await letterText('short.html')).replace(
        '</main>',
        '<script>window.broken = true</script><img src="https://example.org/x.png" alt=""></main>',
      ),
    );
    const { page, faults, close } = await openLetter(browser, path);
    await expect
      .poll(() =>
        faults.filter((fault) => fault.startsWith('policy:')).map((fault) => fault.split(' ')[1]),
      )
      .toEqual(expect.arrayContaining(['script-src-elem', 'img-src']));
    expect(await page.evaluate(() => 'broken' in window)).toBe(false);
    await close();
  });

  it('runs with its security as it comes', async () => {
    const session = await browser.newBrowserCDPSession();
    const line = (await session.send('Browser.getBrowserCommandLine')).arguments.join(' ');
    expect(line).toContain('--no-sandbox');
    expect(line).not.toMatch(
      /web-security|allow-file-access|single-process|site-isolation|insecure|disable-features=[^ ]*IsolateOrigins/,
    );
  });
});

describe.each([['1-commuter-bar.html'], ['2-brunch-room.html'], ['blank.html']])('%s', (name) => {
  it('opens from disk without a complaint or a request', async () => {
    const { page, faults, requests, close } = await openLetter(browser, letterPath(name));
    expect(requests.length).toBeGreaterThan(0);
    // Whatever it draws on waking is drawn.
    await page.evaluate(() => new Promise((done) => requestIdleCallback(done)));
    expect(faults).toEqual([]);
    expect(await page.locator('[data-part=lead]').innerText()).toMatch(
      name === 'blank.html' ? /this letter tells you/ : /^Have \d+/,
    );
    await close();
  });

  it('is small enough for the post', () =>
    expect(statSync(letterPath(name)).size).toBeLessThanOrEqual(1_500_000));
});

describe('the demo', () => {
  it('shows its first picture without waiting for its engine', async () => {
    const context = await browser.newContext({
      javaScriptEnabled: false,
      viewport: { width: 1200, height: 900 },
    });
    const page = await context.newPage();
    const started = performance.now();
    await page.goto(`file://${letterPath('1-commuter-bar.html')}`, { waitUntil: 'commit' });
    await page.locator('[data-part=pictures] figure svg').first().waitFor({ state: 'visible' });
    console.log(`first picture after ${Math.round(performance.now() - started)} ms`);
    const box = await page.locator('[data-part=pictures] figure svg').first().boundingBox();
    expect(box?.width).toBeGreaterThan(200);
    await context.close();
  });
});

describe('hostile names', () => {
  /** All text of the document, as a reader sees it. */
  const textHolds = (part: string): string => part.replace(/\s+/g, ' ');

  /** A table that is saved as CSV opens in a spreadsheet: nothing in it may be taken for a formula there. */
  async function noFormula(page: Page): Promise<void> {
    const buttons = page.locator('button[aria-label^="Save the figures as CSV"]');
    await page.evaluate(() => {
      for (const menu of document.querySelectorAll<HTMLDetailsElement>('details.tools'))
        menu.open = true;
    });
    await buttons.first().waitFor();
    let seen = 0;
    for (const button of await buttons.all()) {
      const [download] = await Promise.all([page.waitForEvent('download'), button.click()]);
      const text = readFileSync(await download.path(), 'utf8');
      for (const cell of text.split(/\r\n|,(?=(?:[^"]*"[^"]*")*[^"]*$)/))
        expect(cell).not.toMatch(/^"?[=+@\t\r]|^"?-(?!\d)/);
      if (text.includes("'=HYPERLINK")) seen += 1;
    }
    expect(seen).toBeGreaterThan(0);
  }

  it('are text in the letter, no formula in a table that is saved, and nothing of them runs, as sent, worked out anew, or saved and opened again', async () => {
    const first = await openLetter(browser, letterPath('hostile.html'));
    const quiet = async ({ page, faults }: typeof first): Promise<void> => {
      expect(faults).toEqual([]);
      expect(await page.evaluate(() => 'broken' in window)).toBe(false);
      expect(await page.locator('main img, main script, main svg[onload]').count()).toBe(0);
      const text = textHolds(await page.locator('main').innerText());
      for (const name of [HOSTILE.scenario, `"'><svg onload=window.broken='svg'>`, HOSTILE.glass])
        expect(text).toContain(name);
    };
    await quiet(first);
    await noFormula(first.page);
    await first.page.click('#pieces > summary');
    await first.page.fill('#pieces-saucer', '60');
    await certified(first.page);
    await quiet(first);
    const letter = await saved(first.page, 'Save this letter');
    await first.close();

    const path = `${inject('letters')}/hostile-again.html`;
    writeFileSync(path, letter.bytes);
    const second = await openLetter(browser, path);
    await quiet(second);
    expect(await second.page.locator('#pieces-saucer').inputValue()).toBe('60');
    await second.close();
  });

  it('are text when the scenario is opened in the blank letter', async () => {
    const { page, faults, close } = await openLetter(browser, letterPath('blank.html'));
    await page.setInputFiles('#open-scenario', letterPath('hostile.yaml'));
    await page.waitForSelector('.status:is([data-phase=provisional], [data-phase=certified])');
    expect(faults).toEqual([]);
    expect(await page.evaluate(() => 'broken' in window)).toBe(false);
    expect(textHolds(await page.locator('main').innerText())).toContain(HOSTILE.glass);
    await close();
  });
});
