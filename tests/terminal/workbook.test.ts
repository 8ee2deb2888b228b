/** The order's workbook in a spreadsheet program that others wrote: it opens, and its formulas come to the sheet's cents. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { orderWorkbook } from '../../src/questions/order/workbook.js';
import type { OrderSheet } from '../../src/ordering/order-sheet.js';
import { emptyFolder } from '../cli/run.js';
import { sampleSheet } from '../ordering/sheet-sample.js';

/** LibreOffice works everything out anew on opening, whatever values the file has. */
const ALWAYS_ANEW = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>`;
/** Commas, quotes, UTF-8, figures as they are rather than as shown, every sheet a file. */
const AS_CSV = 'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1';

type Sheets = (name: string) => readonly string[][];

/** Opens the workbook in LibreOffice and gives its sheets as worked out there. */
async function opened(sheet: OrderSheet): Promise<Sheets> {
  const folder = emptyFolder();
  const profile = join(folder, 'profile');
  mkdirSync(join(profile, 'user'), { recursive: true });
  writeFileSync(join(profile, 'user/registrymodifications.xcu'), ALWAYS_ANEW);
  writeFileSync(join(folder, 'order.xlsx'), await orderWorkbook(sheet));
  const run = spawnSync(
    'soffice',
    [
      `-env:UserInstallation=${pathToFileURL(profile)}`,
      '--headless',
      '--convert-to',
      AS_CSV,
      '--outdir',
      folder,
      join(folder, 'order.xlsx'),
    ],
    { encoding: 'utf8', timeout: 300_000 },
  );
  if (run.error !== undefined && 'code' in run.error && run.error.code === 'ENOENT')
    throw new Error('LibreOffice is missing here (Debian: libreoffice-calc-nogui)');
  expect(run.status, run.stderr).toBe(0);
  return (name) =>
    parse(readFileSync(join(folder, `order-${name}.csv`)), {
      relax_column_count: true,
    }) as string[][];
}

const column = (rows: readonly string[][], title: string): number =>
  rows[0]!.findIndex((cell) => cell.startsWith(title));

describe('the workbook in LibreOffice', { timeout: 600_000 }, () => {
  it('opens, and comes to the cents of the sheet', async () => {
    const sheet = await sampleSheet();
    const sheets = await opened(sheet);
    const rows = sheets('Consignments');
    const total = column(rows, 'Total');
    const freight = column(rows, 'Freight,');
    sheet.consignments.forEach((one, at) => {
      expect(Math.round(Number(rows[at + 1]![total]) * 100)).toBe(one.totalMinor);
      expect(Math.round(Number(rows[at + 1]![freight]) * 100)).toBe(one.freightMinor);
    });
    expect(JSON.stringify(sheets('Order'))).not.toMatch(/#(REF|NAME|VALUE|DIV)|Err:/);
  });

  it('prices freight anew where the cartons of a line change', async () => {
    const sheet = await sampleSheet();
    const quay = sheet.consignments.find(({ supplier }) => supplier === 'quay')!;
    const lines = sheet.lines.map((line) =>
      line.supplier === 'quay' && line.cartons !== null && line.cartons > 0
        ? { ...line, cartons: 1 }
        : line,
    );
    const cartons = lines.filter(
      ({ supplier, cartons: n }) => supplier === 'quay' && n === 1,
    ).length;
    const changed: OrderSheet = { ...sheet, lines };
    const rows = (await opened(changed))('Consignments');
    const row = rows.find(([name]) => name === quay.name)!;
    const goods = lines
      .filter(({ supplier, cartons: n }) => supplier === 'quay' && n === 1)
      .reduce((sum, { cartonMinor }) => sum + cartonMinor!, 0);
    const step = quay.freight.findLast(({ fromCartons }) => cartons >= fromCartons)!;
    expect(goods).toBeLessThan(quay.freeFromMinor!);
    expect(Math.round(Number(row[column(rows, 'Goods')]) * 100)).toBe(goods);
    expect(Math.round(Number(row[column(rows, 'Freight,')]) * 100)).toBe(
      step.fixedMinor + step.perCartonMinor * cartons,
    );
  });
});
