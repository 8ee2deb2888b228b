/** Saved letters and answers worked out again: untouched ones match, one altered number is found, broken files are refused in words. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { inThisThread } from '../../src/cafe/runner.js';
import { readAnswer } from '../../src/cli/verify/answer-file.js';
import { readLetter } from '../../src/cli/verify/letter-file.js';
import { verifyCsv, verifyWorkbook } from '../../src/cli/verify/verify-sheet.js';
import { verifyAnswer } from '../../src/cli/verify/verify-answer.js';
import { verifyLetter } from '../../src/cli/verify/verify-letter.js';
import { order } from '../../src/questions/order/head.js';
import { orderWorkbook } from '../../src/questions/order/workbook.js';
import type { OrderSheet } from '../../src/ordering/order-sheet.js';
import { madeOf } from '../../src/cli/made.js';
import { askedAgain } from '../../src/cli/verify/asked-again.js';
import { madeHere } from '../../src/page/made-here.js';
import { cuptide, emptyFolder } from './run.js';

const SCENARIO = 'scenarios/4-bakery-corner.yaml';
const STOCK = 'cup=34,mug=21,saucer=55,teaspoon=60';
const folder = emptyFolder();
const read = (name: string): string => readFileSync(join(folder, name), 'utf8');
const kept = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};

let letter = '';
let answer = '';
beforeAll(() => {
  const ran = cuptide(['report', SCENARIO, '--stock', STOCK, '--days', '20', '--out', folder]);
  expect(ran.status, ran.err).toBe(0);
  letter = read('4-bakery-corner.html');
  answer = read('4-bakery-corner.json');
}, 110_000);

describe('a letter', () => {
  const checked = (html: string) =>
    verifyLetter(readLetter(html, 'letter.html'), 'letter.html', inThisThread());

  it('matches as it was written', async () => {
    const { differences, values, parts } = await checked(letter);
    expect(differences).toEqual([]);
    expect(values).toBeGreaterThan(1000);
    expect(parts).toBe(14);
  });

  it('is found out where one printed number and one in its data were altered', async () => {
    const data = letter.indexOf('id="given"');
    const printed = letter
      .slice(0, data)
      .replace('<td class="pieces">34<', '<td class="pieces">35<');
    const held = letter.slice(data).replace('"pieces":55', '"pieces":54');
    const { differences } = await checked(printed + held);
    expect(differences.map(({ printed: was, found }) => [was, found])).toEqual([
      ['54', '55'],
      ['35', '34'],
    ]);
    expect(differences[0]!.place).toBe('answer.stock[2].pieces');
    expect(differences[1]!.place).toContain('part "order"');
  });

  it.each([
    ['cut short', () => letter.slice(0, -100), /cut short/],
    ['with data that are no JSON', () => letter.replace('"options":{', '"options":{,'), /damaged/],
    ['with days that cannot be', () => letter.replace('"days":20', '"days":-1'), /options\.days/],
    [
      'that is blank',
      () => letter.replace(/(id="given">)[^<]*/, '$1{"version":"1","scenario":null}'),
      /blank letter/,
    ],
    [
      'of text and pictures alone',
      () => letter.replace(/<script type="application\/json"[^>]*>[^<]*<\/script>/, ''),
      /text and pictures alone/,
    ],
  ])('%s is refused', (_, broken, why) => {
    expect(() => readLetter(broken(), 'letter.html')).toThrow(why);
  });

  it('with another scenario inside is refused', async () => {
    await expect(checked(letter.replace('name: Crust', 'name: Crumb'))).rejects.toThrow(/SHA-256/);
  });
});

describe('an answer', () => {
  const checked = (text: string, scenario: string | undefined = SCENARIO) =>
    verifyAnswer(readAnswer(text, 'answer.json'), { name: 'answer.json', scenario, threads: 1 });

  it('matches as it was written, and one number that was altered is found', async () => {
    expect((await checked(answer)).differences).toEqual([]);
    const spend = /"spend": ([\d.]+)/.exec(answer)![1]!;
    const { differences } = await checked(answer.replace(`"spend": ${spend}`, '"spend": 1'));
    expect(differences).toEqual([{ place: 'spend', printed: '1', found: spend }]);
  });

  it('of the page carries its scenario', async () => {
    const { made: _, ...plain } = JSON.parse(answer) as { made: object; seed: string };
    const text = readFileSync(SCENARIO, 'utf8');
    const stock = Object.fromEntries(
      STOCK.split(',').map((one) => [one.split('=')[0]!, Number(one.split('=')[1])]),
    );
    const made = madeHere(
      { fileName: 'bar.yaml', text, options: { stock, days: 20 }, answer: plain as never },
      { version: '0.1.0' },
    );
    const saved = JSON.stringify({ ...plain, ...made });
    expect((await checked(saved, undefined)).differences).toEqual([]);
  });

  it('needs its scenario, and the very same', async () => {
    await expect(
      verifyAnswer(readAnswer(answer, 'answer.json'), {
        name: 'answer.json',
        scenario: undefined,
        threads: 1,
      }),
    ).rejects.toThrow('--scenario 4-bakery-corner.yaml');
    await expect(checked(answer, 'scenarios/2-brunch-room.yaml')).rejects.toThrow(
      /is not the file that answer\.json was made from/,
    );
  });

  it('that is none of ours, or damaged, is refused', () => {
    expect(() => readAnswer('{"stock":[]}', 'a.json')).toThrow(/"made" is missing/);
    expect(() => readAnswer(answer.slice(0, 500), 'a.json')).toThrow(/cut short/);
    expect(() => readAnswer(answer.replace(/"sha256": "../, '"sha256": "'), 'a.json')).toThrow(
      /made\.scenario/,
    );
  });

  it.each<[string, (made: Record<string, unknown>) => unknown, string]>([
    ['is nothing', () => null, 'made: is no group of fields'],
    ['lacks its command', (made) => ({ ...made, command: undefined }), 'made.command: is missing'],
    [
      'has a seed of numbers',
      (made) => ({ ...made, seed: 1 }),
      'made.seed: 1 is a number where text is needed',
    ],
    [
      'lists its settings',
      (made) => ({ ...made, settings: [] }),
      'made.settings: is no group of settings',
    ],
    [
      'has days in a list',
      (made) => ({ ...made, settings: { days: ['20'] } }),
      'made.settings.days: is a list where text is needed',
    ],
    [
      'holds no scenario',
      (made) => ({ ...made, scenario: 3 }),
      'made.scenario: 3 neither holds the scenario nor names it with its SHA-256',
    ],
    [
      'has half a digest',
      (made) => ({ ...made, files: [{ name: 'a.csv', sha256: 'ab' }] }),
      'made.files[0].sha256: "ab" is no SHA-256',
    ],
    [
      'names one file',
      (made) => ({ ...made, files: 'a.csv' }),
      'made.files: "a.csv" is no list of files',
    ],
  ])('that %s is refused in our words', (_, damage, says) => {
    const saved = JSON.parse(answer) as { made: Record<string, unknown> };
    const damaged = JSON.stringify({ ...saved, made: damage(saved.made) });
    expect(() => readAnswer(damaged, 'a.json')).toThrow(
      `a.json: ${says}; the file is damaged: take it as the command wrote it`,
    );
  });

  it('is refused with every problem of what it was made from', () => {
    const made = { version: 1, command: 2 };
    expect(() => readAnswer(JSON.stringify({ made }), 'a.json')).toThrow(
      /made\.version: 1.*\n.*made\.command: 2.*\n/,
    );
  });
});

describe('an order sheet', () => {
  const scenario = SCENARIO;
  const sources = (name: string) => ({ name: join(folder, name), scenario, threads: 1 });
  const made = madeOf({
    question: 'order',
    settings: order.settings,
    typed: { days: '10', date: '2027-01-04' },
    file: scenario,
    text: readFileSync(scenario, 'utf8'),
    seed: '1',
  });
  let csv = '';
  let sheet: OrderSheet;
  beforeAll(async () => {
    const { json, figures } = await askedAgain(made, undefined, sources('order'));
    csv = String(figures!.content);
    sheet = json as OrderSheet;
    kept('order.json', JSON.stringify({ ...sheet, made }));
  }, 60_000);

  it('as CSV, with its JSON beside it, matches but for the one number that was altered', async () => {
    const { pieces, ware } = sheet.lines[2]!;
    const rows = csv.split('\r\n').map((row) => row.split(','));
    const at = rows[0]!.indexOf('pieces');
    expect([rows[3]![1], rows[3]![at]]).toEqual([ware, String(pieces)]);
    rows[3]![at] = String(pieces + 1);
    const altered = rows.map((row) => row.join(',')).join('\r\n');
    expect((await verifyCsv(altered, sources('order.csv'))).differences).toEqual([
      { place: 'row 4, pieces', printed: String(pieces + 1), found: String(pieces) },
    ]);
    await expect(verifyCsv(csv, sources('alone.csv'))).rejects.toThrow(/the name alone\.json/);
  });

  it('as XLSX carries what it was made from, and matches but for the cell that was altered', async () => {
    const [first, ...rest] = sheet.lines;
    const other = { ...sheet, lines: [{ ...first!, par: first!.par + 1 }, ...rest] };
    expect(
      (await verifyWorkbook(await orderWorkbook(other, made), sources('order.xlsx'))).differences,
    ).toEqual(
      // The par stands on its reorder card too.
      ['Order!E2', 'Reorder cards!C3'].map((place) => ({
        place,
        printed: String(first!.par + 1),
        found: String(first!.par),
      })),
    );
  });

  it('that does not say so, is of other settings or cut short, is refused or found out', async () => {
    await expect(verifyWorkbook(await orderWorkbook(sheet), sources('order.xlsx'))).rejects.toThrow(
      /no sheet "Made from"/,
    );
    const book = await orderWorkbook(sheet, made);
    await expect(verifyWorkbook(book.slice(0, 3000), sources('a.xlsx'))).rejects.toThrow(
      /cut short/,
    );
    const reseeded = { ...made, settings: { ...made.settings, seed: 'other' } };
    const { differences } = await verifyWorkbook(
      await orderWorkbook(sheet, reseeded),
      sources('order.xlsx'),
    );
    expect(differences.some(({ place }) => place.startsWith('Order!'))).toBe(true);
  });
});

it('the command says what does not match, by its exit code too', () => {
  const altered = kept('altered.json', answer.replace(/"spend": [\d.]+/, '"spend": 1'));
  const found = cuptide(['verify', altered, '--scenario', SCENARIO]);
  expect(found.status).toBe(1);
  expect(found.out).toMatch(/1 does not match.*\n? *.*\n {2}spend\n {4}printed 1\n {4}found {3}\d/);
  const none = cuptide(['verify', SCENARIO]);
  expect([none.status, none.err]).toEqual([
    2,
    expect.stringMatching(/neither a letter, an answer nor a table/),
  ]);
});
