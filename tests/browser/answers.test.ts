/** The page works out the very answer of the terminal, tells the last change's only, and never freezes over it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cuptide, emptyFolder, root } from '../cli/run.js';
import {
  certified,
  launchHere,
  letterPath,
  letterText,
  openLetter,
  saved,
  type Letter,
} from './letter.js';

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

/** Tasks of the main thread over 50 ms by the clock, from now on, ms. */
async function longTasks(page: Page): Promise<() => Promise<number[]>> {
  await page.evaluate(() => {
    const long: number[] = [];
    new PerformanceObserver((list) =>
      long.push(...list.getEntries().map(({ duration }) => Math.round(duration))),
    ).observe({ entryTypes: ['longtask'] });
    Object.assign(window, { long });
  });
  return () => page.evaluate(() => (window as unknown as { long: number[] }).long);
}

/** A stretch of work as the browser traces it, µs: of the processor, and by the clock. */
interface TracedTask {
  readonly ph: string;
  readonly tid: number;
  readonly pid: number;
  readonly tdur?: number;
  readonly dur?: number;
}

function mainThreadTasks(trace: string): TracedTask[] {
  const { traceEvents } = JSON.parse(trace) as {
    traceEvents: (TracedTask & { name: string; args: { name?: string } })[];
  };
  const main = traceEvents
    .filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain')
    .map(({ pid, tid }) => `${pid}.${tid}`);
  return traceEvents.filter(
    ({ ph, pid, tid, tdur }) => ph === 'X' && tdur !== undefined && main.includes(`${pid}.${tid}`),
  );
}

/** An answer as it is saved, but for what it was made from: the page's carries the scenario itself, the command's its digest. */
const unmade = (json: string): string => JSON.stringify({ ...JSON.parse(json), made: null });

/** The answer as the page saves it. */
const answerOf = async (page: Page): Promise<string> =>
  (await saved(page, 'Save the answer (JSON)')).bytes.toString('utf8');

describe('the same bytes as the terminal', () => {
  it('a house on few days, worked out in the page after a change and back', async () => {
    const { page, faults, close } = await openLetter(browser, letterPath('2-brunch-room.html'));
    const sent = await lead(page);
    await page.click('#pieces > summary');
    await page.locator('#pieces input').first().press('ArrowUp');
    await certified(page);
    expect(await lead(page)).not.toBe(sent);
    await page.getByRole('button', { name: 'Back to the numbers needed' }).click();
    await certified(page);
    expect(await lead(page)).toBe(sent);
    const { fileName, bytes } = await saved(page, 'Save the answer (JSON)');
    expect(fileName).toMatch(/^\p{L}[\p{L}\p{N}-]*-\d{4}-\d\d-\d\d\.json$/u);
    expect(
      unmade(bytes.toString('utf8')) === unmade(await letterText('2-brunch-room.json')),
      'the same bytes',
    ).toBe(true);
    expect(faults).toEqual([]);
    await close();
  });

  it('the demo, opened as a file in the blank letter on a machine of many cores', async () => {
    const { page, faults, close } = await openLetter(browser, letterPath('blank.html'), {}, 5);
    await page.setInputFiles('#open-scenario', join(root, 'scenarios/1-commuter-bar.yaml'));
    await certified(page);
    // The blank letter runs as many days as the command does by itself: its answer lies in reports/ (reports.test.ts).
    const told = readFileSync(join(root, 'reports/1-commuter-bar.json'), 'utf8');
    expect(unmade(await answerOf(page)) === unmade(told)).toBe(true);
    expect(page.workers()).toHaveLength(5);
    expect(faults).toEqual([]);
    await close();
  });
});

describe('the demo', () => {
  let letter: Letter;
  let page: Page;
  beforeAll(async () => {
    letter = await openLetter(browser, letterPath('1-commuter-bar.html'));
    ({ page } = letter);
    await page.click('#pieces > summary');
  });
  afterAll(() => letter.close());

  it('answers the last of many changes as the terminal does, and gives the others up', async () => {
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
    const folder = emptyFolder();
    const { status, err } = cuptide([
      'report',
      'scenarios/1-commuter-bar.yaml',
      '--stock',
      await piecesTyped(page),
      '--days',
      '2000',
      '--out',
      folder,
    ]);
    expect(status, err).toBe(0);
    const [here, there] = [
      JSON.parse(await answerOf(page)),
      JSON.parse(readFileSync(join(folder, '1-commuter-bar.json'), 'utf8')),
    ];
    expect(here.rushLevel).toBeDefined();
    // The page's carries the scenario itself, and the stock in full.
    expect({ ...here, made: null }).toEqual({ ...there, made: null });
    expect(here.made.scenario.text).toContain('Tern & Tide');
    expect(await page.locator('#pieces-saucer').inputValue()).toBe('37');
    // The terminal took its time: nothing has come after.
    const seen = await phases();
    expect(seen.filter(({ phase }) => phase === 'certified')).toHaveLength(1);
    expect(seen.at(-1)?.phase).toBe('certified');
  });

  it('takes a change while days are being run for the one before', async () => {
    await page.fill('#pieces-saucer', '44');
    await page.waitForSelector('.status[data-phase=provisional]');
    const phases = await notePhases(page);
    await page.fill('#pieces-saucer', '20');
    await page.waitForFunction(
      () =>
        (window as unknown as { phases: { phase: string }[] }).phases.at(-1)?.phase ===
          'certified' && document.querySelector('[data-older]') === null,
      null,
    );
    const seen = await phases();
    expect(seen.filter(({ phase }) => phase === 'certified')).toHaveLength(1);
    expect(
      JSON.parse(await answerOf(page)).stock.map(({ pieces }: { pieces: number }) => pieces),
    ).toContain(20);
  });

  it('never holds the main thread up over an answer, and is back at its own, byte for byte', async () => {
    const long = await longTasks(page);
    await browser.startTracing(page, {
      categories: ['toplevel', 'disabled-by-default-devtools.timeline', '__metadata'],
    });
    const phases = await notePhases(page);
    await page.getByRole('button', { name: 'Back to the numbers needed' }).click();
    await page.waitForFunction(
      () =>
        document.querySelector('.status[data-phase=certified]') !== null &&
        document.querySelector('[data-older]') === null,
      null,
    );
    console.log(
      `after a change: ${(await phases()).map(({ phase, ms }) => `${phase} ${ms} ms`).join(', ')}`,
    );
    const tasks = mainThreadTasks((await browser.stopTracing()).toString('utf8'));
    const worst = (key: 'tdur' | 'dur'): number =>
      Math.max(...tasks.map((task) => task[key]! / 1000));
    console.log(
      `main thread: longest task ${worst('tdur').toFixed(1)} ms of work, ${worst('dur').toFixed(1)} ms by the clock; tasks over 50 ms by the clock: ${JSON.stringify(await long())}`,
    );
    expect(tasks.length).toBeGreaterThan(20);
    // Work rather than clock: a shared machine may stop any task for as long as it likes.
    expect(worst('tdur')).toBeLessThan(50);
    const heap = await (await page.context().newCDPSession(page)).send('Runtime.getHeapUsage');
    console.log(`heap of the page: ${(heap.usedSize / 1e6).toFixed(1)} MB`);
    expect(unmade(await answerOf(page)) === unmade(await letterText('1-commuter-bar.json'))).toBe(
      true,
    );
    expect(letter.faults).toEqual([]);
  });
});

describe('what is typed wrong', () => {
  let letter: Letter;
  let page: Page;
  beforeAll(async () => {
    letter = await openLetter(browser, letterPath('short.html'));
    ({ page } = letter);
  });
  afterAll(() => letter.close());

  it('pieces that are no number: said beside the box, the answer stays, and so does what was typed', async () => {
    await page.click('#pieces > summary');
    await page.fill('#pieces-saucer', '50');
    await certified(page);
    const sentence = await lead(page);
    const box = page.locator('#pieces-saucer');
    for (const wrong of ['', '99999999', '-3', '4.5']) {
      await box.fill(wrong);
      await expect.poll(() => box.getAttribute('aria-invalid'), { message: wrong }).toBe('true');
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
    expect(letter.faults).toEqual([]);
  });

  it('a scenario with mistakes: each is named with its line, the answer stays, and the mended file is taken', async () => {
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
    expect(letter.faults).toEqual([]);
  });
});
