import { unzipSync, strFromU8 } from 'fflate';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { OrderSheet } from '../../src/ordering/order-sheet.js';
import type { OrderStudy } from '../../src/questions/order/study.js';
import { cuptide, emptyFolder } from './run.js';

const demo = 'scenarios/1-commuter-bar.yaml';
const text = readFileSync(demo, 'utf8');
const day = ['--date', '2026-12-01', '--days', '300'];

describe('cuptide order', () => {
  const folder = emptyFolder();
  const told = cuptide(['order', demo, ...day, '--out', folder]);
  const sheet = JSON.parse(cuptide(['order', demo, ...day, '--json']).out) as OrderSheet;

  it('orders whole cartons that cover the holding, with every figure of the sheet in the text', () => {
    expect(told.status, told.err).toBe(0);
    for (const line of sheet.lines) {
      expect(line.pieces).toBe(line.cartons! * line.cartonPieces!);
      expect(line.onHand + line.pieces).toBeGreaterThanOrEqual(line.hold);
      expect(line.hold).toBeGreaterThanOrEqual(line.par);
      expect(told.out).toMatch(
        new RegExp(`${line.name} +${line.par} +${line.hold} +${line.pieces}`),
      );
    }
    const { goodsMinor, freightMinor, taxMinor, totalMinor, handlingMinor } = sheet.totals;
    expect([
      goodsMinor + freightMinor + taxMinor,
      goodsMinor + freightMinor + taxMinor + handlingMinor,
    ]).toContain(totalMinor);
    for (const say of [
      /Over the whole time/,
      /Paper cups and lids for a week: enough for 95/,
      /Where the pieces go/,
      /From the par to the order/,
      /A carton of china is heavy/,
    ])
      expect(told.out).toMatch(say);
  });

  it('tells what one saucer for both cups saves, and how pieces come up from the reserve', () => {
    const { pools, fetching } = sheet as OrderSheet & Pick<OrderStudy, 'pools' | 'fetching'>;
    expect(pools.map(({ saucer, cups }) => [saucer, cups])).toEqual([
      ['saucer', ['medium-cup', 'large-cup']],
    ]);
    expect(pools[0]!.gain.saved).toBeGreaterThan(0);
    expect(fetching!.trips).toBeGreaterThan(0);
    expect(fetching!.safe).toBeGreaterThan(0.85);
    expect(told.out).toMatch(/sharing it between 2 cups saves \d+ saucers/);
  });

  it('writes the same numbers to CSV, workbook and page', () => {
    const csv = readFileSync(join(folder, '1-commuter-bar.order.csv'), 'utf8');
    const book = unzipSync(readFileSync(join(folder, '1-commuter-bar.order.xlsx')));
    const cells = strFromU8(book['xl/worksheets/sheet1.xml']!);
    const page = readFileSync(join(folder, '1-commuter-bar.order.html'), 'utf8');
    for (const line of sheet.lines) {
      expect(csv).toContain(line.name);
      expect(page).toContain(`<td>${line.cartons} × ${line.cartonPieces}</td>`);
      expect(cells).toContain(`<v>${line.cartons}</v>`);
    }
    expect(cells).toMatch(/<f>/);
    expect(page).toContain("default-src 'none'");
    for (const { message } of sheet.warnings)
      expect(page).toContain(message.replaceAll("'", '&#39;'));
    for (const say of [
      `From ${sheet.consignments[0]!.name}: `,
      'Over the whole time',
      'Paper cups and lids for a week',
      'Where the pieces go',
      'From the par to the order',
      'Reorder cards',
      'The machine top, to scale',
    ])
      expect(page).toContain(say);
    expect(readdirSync(folder).filter((name) => name.endsWith('.svg')).length).toBe(
      2 * sheet.lines.length + 1,
    );
  });

  it('splits the great hall between two suppliers where that lands cheaper than one alone, and finds room for all', () => {
    const { status, out, err } = cuptide([
      'order',
      'scenarios/3-great-hall.yaml',
      ...day,
      '--json',
    ]);
    expect(status, err).toBe(0);
    const { consignments, suppliers, plan, storage } = JSON.parse(out) as OrderSheet &
      Pick<OrderStudy, 'storage'>;
    expect(consignments.map(({ supplier }) => supplier)).toEqual(['millbrook', 'northgate']);
    expect(suppliers.find(({ supplier }) => supplier === 'northgate')!.missing).toEqual([
      'espresso-cup',
      'small-saucer',
    ]);
    expect(plan!.chosen.totalMinor).toBeLessThanOrEqual(
      suppliers.find(({ supplier }) => supplier === 'millbrook')!.alone!.totalMinor,
    );
    expect(storage!.homeless).toEqual([]);
  });

  it('needs no supplier to say how many are needed', () => {
    const file = join(folder, 'plain.yaml');
    writeFileSync(file, text.slice(0, text.indexOf('\n# Where to buy')));
    const { status, out, err } = cuptide(['order', file, ...day]);
    expect(status, err).toBe(0);
    expect(out).toMatch(/names no supplier/);
  });

  it('says of ware that nobody sells that its money is not in the sum', () => {
    const file = join(folder, 'unsold.yaml');
    writeFileSync(file, text.replace(/^ +saucer: \{ price: .*carton: .*\n/m, ''));
    const { status, out, err } = cuptide(['order', file, ...day]);
    expect(status, err).toBe(0);
    expect(out.replace(/\s+/g, ' ')).toMatch(/No supplier sells Saucer: the pieces are counted/);
  });

  it.each([
    ['a carton of nothing', 'carton: 12 }', 'carton: 0 }', /carton/],
    [
      'a missing carton',
      '{ price: 5.20 EUR, carton: 12 }',
      '{ price: 5.20 EUR }',
      /carton: is missing/,
    ],
    [
      'freight steps out of order',
      'freight: { fixed: 14 EUR, perCarton: 3 EUR, freeFrom: 900 EUR }',
      'freight: { steps: [{ from: 9, fixed: 20 EUR }, { from: 1, fixed: 9 EUR }] }',
      /steps/,
    ],
    ['a lead time longer than the horizon', 'leadTime: 7 days', 'leadTime: 900 days', /leadTime/],
    [
      'another currency',
      'medium-cup: { price: 5.20 EUR, carton',
      'medium-cup: { price: 5.20 USD, carton',
      /USD/,
    ],
    [
      'an unknown ware',
      '        teaspoon: { price: 1.30 EUR, carton: 24 }',
      '        teaspon: { price: 1.30 EUR, carton: 24 }',
      /teaspon.*teaspoon/s,
    ],
  ])('refuses %s, with its place, and writes nothing', (_, good, bad, message) => {
    const file = join(folder, 'bad.yaml');
    expect(text).toContain(good);
    writeFileSync(file, text.replace(good, bad));
    const out = join(folder, 'never');
    const ran = cuptide(['order', file, ...day, '--out', out]);
    expect([ran.status, ran.out]).toEqual([2, '']);
    expect(ran.err).toMatch(message);
    expect(ran.err).toMatch(/bad\.yaml:\d+:\d+: supply\./);
    expect(existsSync(out)).toBe(false);
  });

  it('refuses a day that is none', () => {
    expect(cuptide(['order', demo, '--date', '31.12.2026'])).toMatchObject({ status: 2, out: '' });
  });
});

describe('cuptide stocktake', () => {
  const folder = emptyFolder();
  const counted = (rows: string): string => {
    const file = join(folder, 'counts.csv');
    writeFileSync(file, rows);
    return file;
  };
  const args = (rows: string, last = 'medium-cup=47,teaspoon=97'): string[] => [
    'stocktake',
    demo,
    '--counts',
    counted(rows),
    '--since',
    '2026-09-01',
    '--last',
    last,
    ...day,
  ];

  it('tells what is missing, the rate seen, the rate updated, and what to order', () => {
    const { status, out, err } = cuptide([
      ...args('ware,counted,broken,retired\nmedium-cup,40,2,1\nteaspoon,80,,\n'),
      '--all',
    ]);
    expect(status, err).toBe(0);
    const flat = out.replaceAll(/\s+/g, ' ');
    expect(flat).toMatch(
      /Medium cup: 6 of 47 lost in 3 months \(2 broken, 4 missing\), 1 retired, [\d.]+ times what is usual/,
    );
    expect(flat).toMatch(/Medium cup 47 40 1 2 4 /);
    expect(flat).toMatch(/Broken per 1,000 uses .* Medium cup [\d.]+ [\d.]+–[\d.]+ 0\.30 0\.\d\d /);
    expect(flat).toMatch(/Not counted: Large cup, Saucer and Tumbler/);
  });

  it('questions a count that the usual rates hardly allow, and prices the order in cartons', () => {
    const { status, out, err } = cuptide(args('ware,counted,broken\nmedium-cup,29,5\n'));
    expect(status, err).toBe(0);
    const flat = out.replaceAll(/\s+/g, ' ');
    expect(flat).toMatch(/18 of 47 lost in 3 months \(5 broken, 13 missing\)/);
    expect(flat).toMatch(/Find out where before you buy/);
    expect(flat).toMatch(
      /First find out what happened to: Medium cup\. Wait with the order until you know: (12|24|36) medium cups, for €/,
    );
    expect(flat).toMatch(
      /Wait with the order of (12|24|36) \([123] cartons?, €[\d.]+ with freight and tax\)/,
    );
    expect(flat).not.toContain('Order now');
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
  });

  it.each([
    [
      'more counted than there were',
      'ware,counted\nmedium-cup,400\n',
      /counts\.csv:2: .*more than the 47/,
    ],
    ['unknown ware', 'ware,counted\nmedium-cups,30\n', /counts\.csv:2: .*not a ware.*medium-cup/],
    ['a count below nothing', 'ware,counted\nmedium-cup,-3\n', /counts\.csv:2: .*not a count/],
    ['no column of counts', 'ware,pieces\nmedium-cup,3\n', /counts\.csv:1: /],
    [
      'several mistakes, all at once',
      'ware,counted\nmedium-cups,3\nsaucer,x\n',
      /counts\.csv:2: ware: "medium-cups".*counts\.csv:3: counted: "x" is not a count of pieces.*2 problems/s,
    ],
    [
      'a cell that would steer a terminal',
      'ware,counted\n\u001b[31mcup,3\n',
      /"\?\[31mcup" is not a ware/,
    ],
  ])('refuses %s', (_, rows, message) => {
    const ran = cuptide(args(rows));
    expect([ran.status, ran.out]).toEqual([2, '']);
    expect(ran.err).toMatch(message);
  });

  it.each([
    [
      'a last count after this one',
      ['--since', '2027-01-01'],
      /--since: "2027-01-01" is not before 2026-12-01, the day of this count/,
    ],
    [
      'unknown ware at the last count',
      ['--since', '2026-09-01', '--last', 'sauser=4'],
      /--last: "sauser" is not a ware of this scenario/,
    ],
  ])('refuses %s, naming the option', (_, more, message) => {
    const ran = cuptide([
      'stocktake',
      demo,
      '--counts',
      counted('ware,counted\nsaucer,3\n'),
      ...day,
      ...more,
    ]);
    expect([ran.status, ran.out]).toEqual([2, '']);
    expect(ran.err).toMatch(message);
  });
});
