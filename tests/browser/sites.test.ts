/** The page of a table of sites in a browser: it sorts, filters, shows a small picture a site, and leads to a letter. */
import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { inThisThread } from '../../src/cafe/runner.js';
import { sitesPage } from '../../src/questions/sites/page.js';
import { rowOf, type UnitRow } from '../../src/questions/sites/row.js';
import { baseOf, sitesOf } from '../../src/questions/sites/site.js';
import { sitesAnswer, supplyOfBase } from '../../src/questions/sites/study.js';
import { readTable } from '../../src/questions/sites/table.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { contextOf } from '../../src/tell/context-of.js';
import { emptyFolder } from '../cli/run.js';
import { accepted, valid } from '../scenario/a-scenario.js';
import { launch } from './launch.js';

const TABLE =
  'id,name,drop,guests\nash,Ash House,north,90\nbirch,Birch <i>,south,20\nelm,Elm,south,400\n';
let browser: Browser;
let page: Page;
const errors: string[] = [];

beforeAll(async () => {
  const opened = accepted(valid);
  const base = baseOf(opened, undefined);
  const table = readTable(new TextEncoder().encode(TABLE), 't.csv', opened);
  const sites = table.ok ? sitesOf(table.value, base) : table;
  const supply = supplyOfBase(base, 'base.yaml');
  if (!sites.ok || !supply.ok) throw new Error('sites');
  const rows: UnitRow[] = [];
  for (const { line, opened: own } of sites.value)
    rows.push(await rowOf(line.id, own, inThisThread(), { days: 20, watch: 5 }));
  const answer = await sitesAnswer(sites.value, rows, base, supply.value, {
    level: undefined,
    date: '2027-01-11',
    sparesAt: 'sites',
    loadSolver: () => Promise.reject(new Error('nothing is ordered')),
  });
  const html = await sitesPage(
    answer,
    contextOf(opened.scenario, opened.inputs, '0', piecesPerRackOf),
    {
      letters: new Map([['birch', 't.birch & co.html']]),
      hashOf: (text) => `sha256-${createHash('sha256').update(text).digest('base64')}`,
      typefaces: '',
    },
  );
  const folder = emptyFolder();
  writeFileSync(join(folder, 't.birch & co.html'), '<title>The letter of Birch</title>');
  writeFileSync(join(folder, 't.sites.html'), html);
  browser = await launch(inject('browser'));
  page = await browser.newPage();
  page.on('console', (message) => errors.push(message.text()));
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(pathToFileURL(join(folder, 't.sites.html')).href);
});

afterAll(() => browser?.close());

const names = (): Promise<string[]> =>
  page.locator('#sites tbody tr:visible th bdi').allTextContents();

describe('the page of sites', () => {
  it('sorts by names and by figures, either way round', async () => {
    const head = (name: string) => page.getByRole('button', { name, exact: true });
    expect(await names()).toEqual(['Ash House', 'Birch <i>', 'Elm']);
    await head('Guests an hour').click();
    expect(await names()).toEqual(['Birch <i>', 'Ash House', 'Elm']);
    await head('Guests an hour').click();
    expect(await names()).toEqual(['Elm', 'Ash House', 'Birch <i>']);
    expect(await page.locator('th[aria-sort=descending]').textContent()).toBe('Guests an hour');
    await head('Drop').click();
    expect((await names())[0]).toBe('Ash House');
    expect(await page.locator('th[aria-sort]').count()).toBe(1);
  });

  it('leaves the rows that have all words, and says how many', async () => {
    const filter = page.getByRole('searchbox');
    await filter.fill('SOUTH elm');
    expect(await names()).toEqual(['Elm']);
    expect(await page.locator('#shown').textContent()).toBe('1');
    await filter.fill('');
    // Four hundred guests an hour are more than its makers can serve.
    await page.getByRole('checkbox').check();
    const minded = await names();
    expect(minded).toContain('Elm');
    expect(minded.length).toBe(Number(await page.locator('#shown').textContent()));
    await page.getByRole('checkbox').uncheck();
    expect(await names()).toHaveLength(3);
  });

  it('shows a picture a site, and leads to the letter of one', async () => {
    const pictures = page.locator('#sites tbody svg[role=img]');
    expect(await pictures.count()).toBe(3);
    for (const picture of await pictures.all()) {
      const box = (await picture.boundingBox())!;
      expect(box.width * box.height).toBeGreaterThan(1000);
      expect(await picture.getAttribute('aria-label')).toMatch(/^Off the shelf/);
    }
    await page.getByRole('link', { name: 'letter' }).click();
    await page.waitForURL(/birch/);
    expect(await page.title()).toBe('The letter of Birch');
    expect(errors).toEqual([]);
  });
});
