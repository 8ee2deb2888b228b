/** The page works out the very answer of the terminal, tells the last change's only, and never freezes over it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cuptide, emptyFolder, root } from '../cli/run.js';
import { certified, launchHere, letterPath, letterText, openLetter, saved } from './letter.js';

let browser: Browser;
beforeAll(async () => {
  browser = await launchHere();
});
afterAll(() => browser.close());

/** Notes each phase of the answer with the lead sentence of that moment and the time since the noting began. */
async function notePhases(
  page: Page,
): Promise<() => Promise<{ phase: string; ms: number; lead: string }[]>> {
  await page.evaluate(() => {
    const started = performance.now();
    const phases: { phase: string; ms: number; lead: string }[] = [];
    const island = document.querySelector('[data-island=status]')!;
    const note = (): void => {
      const phase = island.querySelector<HTMLElement>('.status')?.dataset['phase'] ?? '';
      if (phases.at(-1)?.phase !== phase)
        phases.push({
          phase,
          ms: Math.round(performance.now() - started),
          lead: document.querySelector('[data-part=lead]')?.textContent ?? '',
        });
    };
    new MutationObserver(note).observe(island, {
      subtree: true,
      childList: true,
      attributes: true,
    });
    Object.assign(window, { phases });
  });
  return () =>
    page.evaluate(
      () => (window as unknown as { phases: { phase: string; ms: number; lead: string }[] }).phases,
    );
}

const lead = (page: Page): Promise<string> => page.locator('[data-part=lead]').innerText();

/** The pieces in the page's boxes, as `--stock` takes them. */
const piecesTyped = (page: Page): Promise<string> =>
  page
    .locator('#pieces input')
    .evaluateAll((boxes) =>
      boxes
        .map((box) => `${box.id.replace('pieces-', '')}=${(box as HTMLInputElement).value}`)
        .join(','),
    );

describe('the same bytes as the terminal', () => {
  it.each([['1-commuter-bar'], ['2-brunch-room']])(
    '%s: worked out in the page after a change and back',
    async (stem) => {
      const { page, faults, close } = await openLetter(browser, letterPath(`${stem}.html`));
      const sent = await lead(page);
      await page.click('#pieces > summary');
      await page.locator('#pieces input').first().press('ArrowUp');
      await certified(page);
      expect(await lead(page)).not.toBe(sent);
      await page.getByRole('button', { name: 'Back to the numbers needed' }).click();
      await certified(page);
      expect(await lead(page)).toBe(sent);
      const { fileName, bytes } = await saved(page, 'Save the answer (JSON)');
      expect(fileName).toMatch(/^(tern-tide|\p{L}[\p{L}\p{N}-]*)-\d{4}-\d\d-\d\d\.json$/u);
      expect(bytes.toString('utf8') === (await letterText(`${stem}.json`)), 'the same bytes').toBe(
        true,
      );
      expect(faults).toEqual([]);
      await close();
    },
  );

  it.each([['1-commuter-bar'], ['2-brunch-room']])(
    '%s: opened as a file in the blank letter',
    async (stem) => {
      const { page, faults, close } = await openLetter(browser, letterPath('blank.html'));
      await page.setInputFiles('#open-scenario', join(root, 'scenarios', `${stem}.yaml`));
      await certified(page);
      const { bytes } = await saved(page, 'Save the answer (JSON)');
      expect(bytes.toString('utf8') === (await letterText(`${stem}.json`)), 'the same bytes').toBe(
        true,
      );
      expect(faults).toEqual([]);
      await close();
    },
  );

  it('a stock that was given', async () => {
    const { page, close } = await openLetter(browser, letterPath('1-commuter-bar.html'));
    await page.click('#pieces > summary');
    await page.fill('#pieces-medium-cup', '30');
    await certified(page);
    const { bytes } = await saved(page, 'Save the answer (JSON)');
    const folder = emptyFolder();
    const { status, err } = cuptide([
      'report',
      'scenarios/1-commuter-bar.yaml',
      '--stock',
      await piecesTyped(page),
      '--out',
      folder,
    ]);
    expect(status, err).toBe(0);
    const [here, there] = [
      JSON.parse(bytes.toString('utf8')),
      JSON.parse(readFileSync(join(folder, '1-commuter-bar.json'), 'utf8')),
    ];
    expect(here.rushLevel).toBeDefined();
    // The page's carries the scenario itself, and the stock in full.
    expect({ ...here, made: null }).toEqual({ ...there, made: null });
    expect(here.made.scenario.text).toContain('Tern & Tide');
    await close();
  });
});

describe('one change after the other', () => {
  it('the last one is answered, the others are given up', async () => {
    const { page, close } = await openLetter(browser, letterPath('1-commuter-bar.html'));
    await page.click('#pieces > summary');
    const phases = await notePhases(page);
    // As fast as a finger on the arrow key; a certified answer takes many times as long.
    await page.locator('#pieces-saucer').evaluate(async (box: HTMLInputElement) => {
      for (const pieces of ['42', '41', '40', '39', '38', '37']) {
        box.value = pieces;
        box.dispatchEvent(new InputEvent('input', { bubbles: true }));
        await new Promise((resolve) => setTimeout(resolve, 40));
      }
    });
    await certified(page);
    await page.waitForTimeout(500);
    const seen = await phases();
    expect(seen.filter(({ phase }) => phase === 'certified')).toHaveLength(1);
    expect(seen.at(-1)?.phase).toBe('certified');
    expect(await page.locator('#pieces-saucer').inputValue()).toBe('37');
    const { bytes } = await saved(page, 'Save the answer (JSON)');
    const answer = JSON.parse(bytes.toString('utf8'));
    const terminal = JSON.parse(
      cuptide([
        'size',
        'scenarios/1-commuter-bar.yaml',
        '--stock',
        await piecesTyped(page),
        '--json',
      ]).out,
    );
    for (const key of ['stock', 'rushLevel', 'fillRate', 'days', 'busy', 'guests'])
      expect(answer[key], key).toEqual(terminal[key]);
    await close();
  });

  it('a change while days are being run for the one before', async () => {
    const { page, close } = await openLetter(browser, letterPath('1-commuter-bar.html'));
    await page.click('#pieces > summary');
    await page.fill('#pieces-saucer', '44');
    await page.waitForSelector('.status:is([data-phase=provisional], [data-phase=certified])');
    const phases = await notePhases(page);
    await page.fill('#pieces-saucer', '20');
    await page.waitForFunction(
      () =>
        (window as unknown as { phases: { phase: string }[] }).phases.at(-1)?.phase ===
          'certified' && document.querySelector('[data-older]') === null,
      null,
      { timeout: 40_000 },
    );
    const seen = await phases();
    expect(seen.filter(({ phase }) => phase === 'certified')).toHaveLength(1);
    expect(
      JSON.parse((await saved(page, 'Save the answer (JSON)')).bytes.toString('utf8')).stock.map(
        ({ pieces }: { pieces: number }) => pieces,
      ),
    ).toContain(20);
    await close();
  });
});

describe('what is typed wrong', () => {
  it('pieces that are no number: said beside the box, the answer stays, and so does what was typed', async () => {
    const { page, faults, close } = await openLetter(browser, letterPath('short.html'));
    await page.click('#pieces > summary');
    await page.fill('#pieces-saucer', '50');
    await certified(page);
    const sentence = await lead(page);
    const box = page.locator('#pieces-saucer');
    for (const wrong of ['', '99999999', '-3', '4.5']) {
      await box.fill(wrong);
      await page.waitForTimeout(150);
      expect(await box.getAttribute('aria-invalid'), wrong).toBe('true');
      expect(await box.inputValue()).toBe(wrong);
      expect(
        await page.locator(`#${await box.getAttribute('aria-describedby')}`).innerText(),
        wrong,
      ).toMatch(/whole number/);
      expect(await lead(page), wrong).toBe(sentence);
    }
    await box.fill('51');
    await page.waitForFunction(
      (old) => document.querySelector('[data-part=lead]')?.textContent !== old,
      sentence,
    );
    expect(await box.getAttribute('aria-invalid')).toBe('false');
    expect(faults).toEqual([]);
    await close();
  });

  it('a scenario with mistakes: each is named with its line, the answer stays, and the mended file is taken', async () => {
    const { page, faults, close } = await openLetter(browser, letterPath('short.html'));
    const sentence = await lead(page);
    const text = await letterText('short.yaml');
    const open = (content: string) =>
      page.setInputFiles('#open-scenario', {
        name: 'mine.yaml',
        mimeType: 'application/yaml',
        buffer: Buffer.from(content),
      });
    const line = text.split('\n').findIndex((one) => one.startsWith('  makers: 2')) + 1;
    await open(text.replace('  makers: 2', '  makers: many'));
    const alert = page.locator('.status [role=alert]');
    await alert.waitFor();
    expect(await alert.innerText()).toContain(`Line ${line}`);
    expect(await alert.innerText()).toContain('makers');
    expect(await lead(page)).toBe(sentence);
    // Read before the next file is opened: the page may have reported its mistakes before a later reading.
    const first = await alert.textContent();
    await open('%%% : [');
    await page.waitForFunction(
      (old) => document.querySelector('.status [role=alert]')?.textContent !== old,
      first,
    );
    expect(await lead(page)).toBe(sentence);
    expect((await saved(page, 'Save the scenario')).bytes.toString('utf8')).toBe(text);
    await open(text.replace('  makers: 2', '  makers: 3'));
    await certified(page);
    expect(await alert.count()).toBe(0);
    expect((await saved(page, 'Save the scenario')).bytes.toString('utf8')).toContain('makers: 3');
    expect(faults).toEqual([]);
    await close();
  });
});

describe('the main thread', () => {
  it('is never held up while the answer is worked out', async () => {
    const { page, close } = await openLetter(browser, letterPath('1-commuter-bar.html'));
    await page.click('#pieces > summary');
    // What the engines do unseen on waking, so that they are quick, is over by then.
    await page.waitForTimeout(2_500);
    await page.evaluate(() => {
      const long: number[] = [];
      new PerformanceObserver((list) =>
        long.push(...list.getEntries().map(({ duration }) => Math.round(duration))),
      ).observe({ entryTypes: ['longtask'] });
      Object.assign(window, { long });
    });
    await browser.startTracing(page, {
      categories: ['toplevel', 'disabled-by-default-devtools.timeline', '__metadata'],
    });
    const phases = await notePhases(page);
    await page.fill('#pieces-medium-cup', '31');
    await certified(page);
    console.log(
      `after a change: ${(await phases()).map(({ phase, ms }) => `${phase} ${ms} ms`).join(', ')}`,
    );
    const { traceEvents } = JSON.parse((await browser.stopTracing()).toString('utf8')) as {
      traceEvents: {
        name: string;
        ph: string;
        tid: number;
        pid: number;
        tdur?: number;
        dur?: number;
        args: { name?: string };
      }[];
    };
    const main = traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain')
      .map(({ pid, tid }) => `${pid}.${tid}`);
    const tasks = traceEvents.filter(
      ({ ph, pid, tid, tdur }) =>
        ph === 'X' && tdur !== undefined && main.includes(`${pid}.${tid}`),
    );
    const worst = (key: 'tdur' | 'dur'): number =>
      Math.max(...tasks.map((task) => task[key]! / 1000));
    console.log(
      `main thread: longest task ${worst('tdur').toFixed(1)} ms of work, ${worst('dur').toFixed(1)} ms by the clock; tasks over 50 ms by the clock: ${JSON.stringify(await page.evaluate(() => (window as unknown as { long: number[] }).long))}`,
    );
    expect(tasks.length).toBeGreaterThan(20);
    // Work rather than clock: a shared machine may stop any task for as long as it likes.
    expect(worst('tdur')).toBeLessThan(50);
    const heap = await (await page.context().newCDPSession(page)).send('Runtime.getHeapUsage');
    console.log(`heap of the page: ${(heap.usedSize / 1e6).toFixed(1)} MB`);
    await close();
  });
});
