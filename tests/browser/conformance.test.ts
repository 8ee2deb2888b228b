import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { conformanceScript } from '../engine/conformance-script.mjs';
import expected from '../engine/conformance.json' with { type: 'json' };
import { launchHere } from './letter.js';

let browser: Browser;
beforeAll(async () => {
  browser = await launchHere();
});
afterAll(() => browser.close());

it('gives the bytes that Node gives, in functions, draws and answers', async () => {
  const page = await browser.newPage();
  await page.addScriptTag({ content: await conformanceScript() });
  const found = await page.evaluate(
    () => (globalThis as unknown as { conformance: Promise<unknown> }).conformance,
  );
  expect(found).toEqual(expected);
});
