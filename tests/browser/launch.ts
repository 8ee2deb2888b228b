/** How the browser is started for the page. */
import { chromium, type Browser } from 'playwright-core';
import type { Unpacked } from './unpack-browser.js';

/** Nothing here loosens what the browser holds a page to; the sandbox cannot be had by root. */
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-dev-shm-usage',
  '--no-first-run',
  '--enable-automation',
];

export const launch = ({ executablePath, env }: Unpacked): Promise<Browser> =>
  chromium.launch({
    executablePath,
    args: FLAGS,
    env: { ...(process.env as Record<string, string>), ...env },
  });
