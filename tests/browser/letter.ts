/** A letter open in the browser, and everything that it must not do, noted. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Download, Page } from 'playwright-core';
import { inject } from 'vitest';
import { launch } from './launch.js';

/** The browser of a test file. */
export const launchHere = (): Promise<Browser> => launch(inject('browser'));

export const letterPath = (name: string): string => join(inject('letters'), name);
export const letterText = (name: string): Promise<string> => readFile(letterPath(name), 'utf8');

export interface Letter {
  readonly page: Page;
  /** Errors, complaints of the content policy, and requests that would leave the machine. */
  readonly faults: string[];
  readonly requests: string[];
  close(): Promise<void>;
}

/**
 * Opens a letter from disk and waits until it is awake.
 * @param path a file's; with `#reader` if wanted
 * @param cores that the machine is to look as if it had
 */
export async function openLetter(
  browser: Browser,
  path: string,
  options: BrowserContextOptions = {},
  cores?: number,
): Promise<Letter> {
  const context = await browser.newContext({
    viewport: { width: 1200, height: 900 },
    locale: 'en-IE',
    ...options,
  });
  // As the tests' own polls (vitest.config.ts): a machine under load may take its time.
  context.setDefaultTimeout(100_000);
  const page = await context.newPage();
  const faults: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning')
      faults.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => faults.push(`error: ${error.message}`));
  page.on('dialog', (dialog) => {
    faults.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on('request', (request) => {
    requests.push(request.url());
    if (!/^(?:file|blob|data):/.test(request.url())) faults.push(`request: ${request.url()}`);
  });
  await page.exposeFunction('noteFault', (text: string) => void faults.push(text));
  await page.addInitScript(() => {
    const { noteFault } = globalThis as unknown as { noteFault(text: string): void };
    document.addEventListener('securitypolicyviolation', (event) =>
      noteFault(`policy: ${event.violatedDirective} ${event.blockedURI}`),
    );
  });
  if (cores !== undefined)
    await page.addInitScript(
      (value) => Object.defineProperty(navigator, 'hardwareConcurrency', { value }),
      cores,
    );
  await page.goto(`file://${path}`);
  await page.waitForSelector('html[data-ready]', { state: 'attached' });
  // Counted in the page, as a machine under load may go from one phase to the next between two looks from outside.
  await page.evaluate(() => {
    const counted = { certified: 0 };
    Object.assign(window, { counted });
    new MutationObserver((records) => {
      const phase = document.querySelector<HTMLElement>('.status')?.dataset['phase'];
      // Back at what was sent, the phase goes from one certified answer straight to the other.
      const back = phase === 'as-sent' && records.some(({ oldValue }) => oldValue === 'certified');
      if (phase === 'certified' || back) counted.certified += 1;
    }).observe(document.querySelector('[data-island=status]')!, {
      subtree: true,
      attributeFilter: ['data-phase'],
      attributeOldValue: true,
    });
  });
  return { page, faults, requests, close: () => context.close() };
}

/** Certified answers that a test has waited for already. */
const waitedFor = new WeakMap<Page, number>();

/** Waits for a certified answer since the last one waited for, with everything drawn. */
export async function certified(page: Page): Promise<void> {
  await page.waitForFunction(
    (known) => {
      const done =
        ['certified', 'as-sent'].includes(
          document.querySelector<HTMLElement>('.status')?.dataset['phase'] ?? '',
        ) && document.querySelector('[data-older]') === null;
      return (
        done && (window as unknown as { counted: { certified: number } }).counted.certified > known
      );
    },
    waitedFor.get(page) ?? 0,
  );
  waitedFor.set(
    page,
    await page.evaluate(
      () => (window as unknown as { counted: { certified: number } }).counted.certified,
    ),
  );
}

export async function bytesOf(download: Download): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}

/** What comes down when a button of that name is pressed. */
export async function saved(
  page: Page,
  name: string,
): Promise<{ fileName: string; bytes: Buffer }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name, exact: true }).click(),
  ]);
  return { fileName: download.suggestedFilename(), bytes: await bytesOf(download) };
}
