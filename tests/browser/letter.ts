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

/** Opens a letter from disk and waits until it is awake. @param path a file's; with `#reader` if wanted */
export async function openLetter(browser: Browser, path: string, options: BrowserContextOptions = {}): Promise<Letter> {
  const context = await browser.newContext({ viewport: { width: 1200, height: 900 }, locale: 'en-IE', ...options });
  const page = await context.newPage();
  const faults: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') faults.push(`console: ${message.text()}`);
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
    document.addEventListener('securitypolicyviolation', (event) => noteFault(`policy: ${event.violatedDirective} ${event.blockedURI}`));
  });
  await page.goto(`file://${path}`);
  await page.waitForSelector('html[data-ready]', { state: 'attached', timeout: 30_000 });
  return { page, faults, requests, close: () => context.close() };
}

/** Waits for the certified answer with everything drawn. */
export async function certified(page: Page): Promise<void> {
  await page.waitForSelector('.status[data-phase=certified]', { timeout: 40_000 });
  await page.waitForFunction(() => document.querySelector('[data-older]') === null, null, { timeout: 40_000 });
}

export async function bytesOf(download: Download): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}

/** What comes down when a button of that name is pressed. */
export async function saved(page: Page, name: string): Promise<{ fileName: string; bytes: Buffer }> {
  const [download] = await Promise.all([page.waitForEvent('download', { timeout: 30_000 }), page.getByRole('button', { name, exact: true }).click()]);
  return { fileName: download.suggestedFilename(), bytes: await bytesOf(download) };
}
