import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { command, cuptide, emptyFolder, root } from './run.js';

const demo = 'scenarios/1-commuter-bar.yaml';
const bakery = 'scenarios/4-bakery-corner.yaml';
const csv = 'shared/till/bakery-quarter-hours.csv';
const till = 'shared/till/bakery-saturdays.map.yaml';

/** A mistake: exit 2, nothing on stdout, a message that says this, and never a stack. */
function expectMistake(args: readonly string[], ...says: readonly (string | RegExp)[]): void {
  const { status, out, err } = cuptide(args);
  expect(status, err).toBe(2);
  expect(out).toBe('');
  for (const say of says) expect(err).toMatch(say);
  expect(err).not.toMatch(/\n\s*at .*:\d+:\d+|node:internal/);
}

describe('files that are no scenario', () => {
  const folder = emptyFolder();
  const file = (name: string, content: string | Uint8Array): string => {
    writeFileSync(join(folder, name), content);
    return join(folder, name);
  };

  it.each([
    ['no such file', () => join(folder, 'none.yaml'), /none\.yaml: no such file/],
    ['a directory', () => folder, /is a directory; name a file in it/],
    ['an empty file', () => file('empty.yaml', ''), /empty/],
    ['not UTF-8', () => file('latin.yaml', Buffer.from([0x6e, 0x3a, 0xe9, 0xff])), /UTF-8/],
    ['over 1 MB', () => file('large.yaml', 'x'.repeat(1_000_001)), /1\.0 MB is more than the 1 MB/],
    [
      'aliases that explode',
      () =>
        file(
          'bomb.yaml',
          `a: &a [x,x,x,x,x,x,x,x,x]\nb: &b [*a,*a,*a,*a,*a,*a,*a,*a,*a]\nc: &c [*b,*b,*b,*b,*b,*b,*b,*b,*b]\nd: &d [*c,*c,*c,*c,*c,*c,*c,*c,*c]\ne: [*d,*d,*d,*d,*d,*d,*d,*d,*d]\n`,
        ),
      /alias/i,
    ],
  ])('%s', (_, path, message) => expectMistake(['size', path()], message));

  it('names every problem at once, with line, column, value, rule and remedy', () => {
    const path = file(
      'bad.yaml',
      'name: X\nware: { cup: { price: 3 } }\nmenu: { a: { share: 50 %, setting: [cpu] } }\nseets: 4\nhours: { from: "10:00", to: "09:00" }\n',
    );
    expectMistake(
      ['check', path],
      /bad\.yaml:2:\d+: ware\.cup\.price: 3 is a number without a unit where money is needed; write "3 EUR"/,
      /bad\.yaml:3:\d+: menu\.a\.setting\[0\]: "cpu" is not in ware; did you mean "cup"\?/,
      /bad\.yaml:3:1: menu: has shares that add up to 50 %/,
      /bad\.yaml:4:1: seets: "seets" is not a field here; did you mean "seats"\?/,
      /bad\.yaml:5:\d+: hours\.to: "09:00" is a closing time before the opening time/,
      /problems; nothing was done\./,
    );
  });
});

describe('more than can be counted', () => {
  it('is the mistake of who wrote the scenario, not a fault of ours', () => {
    const file = join(emptyFolder(), 'tower.yaml');
    const text = readFileSync(join(root, demo), 'utf8');
    const tower = text
      .slice(0, text.indexOf('\nalternatives:'))
      .replace(
        'setting: [medium-cup, saucer, teaspoon]',
        `setting: [${Array.from({ length: 4000 }, () => 'medium-cup').join(', ')}]`,
      );
    writeFileSync(file, tower);
    expectMistake(
      ['size', file, '--days', '1'],
      /^ware "medium-cup": \d+ pieces are off the shelf at once on day 0, and at most 65535 can be counted; check the guests/,
    );
  });
});

describe('options', () => {
  it.each([
    [[], /Name a command/],
    [['siz', demo], /"siz" is not a command; did you mean "size"\?/],
    [['size'], /^Name the file: cuptide size FILE\n$/],
    [['check'], /^Name a scenario file, or give --schema/],
    [['size', demo, '--levle', '0.9'], /^--levle is not an option of size; did you mean --level\?/],
    [['report', demo, '--no-out'], /^--no-out is not an option of report; leave out --out/],
    [['size', demo, '--seed.x=3'], /^--seed\.x is not an option of size/],
    [['size', demo, '--level', '100 %'], /^--level: "100 %" is not a share between 0 and 100 %/],
    [['size', demo, '--level', '0'], /^--level: "0" is not a share/],
    [['size', demo, '--level', '-5'], /^--level needs a value|^--level: "-5" is not a share/],
    [['size', demo, '--level'], /^--level needs a value/],
    [['size', demo, '--days'], /^--days needs a value/],
    [['size', demo, '--threads'], /^--threads needs a value/],
    [['compare', demo, '--uncertainty'], /^--uncertainty needs a value/],
    [['size', demo, '--days', '0'], /^--days: "0" is not a whole number from 1 to 1,000,000/],
    [['size', demo, '--days', '1e3'], /^--days: "1e3" is not a whole number/],
    [['compare', demo, '--days', '50'], /^--days: "50" is not a whole number from 100 to/],
    [['size', demo, '--seed', 'a', '--seed', 'b'], /^--seed is given twice; give it once\n$/],
    [
      ['size', demo, '--seed=a', '--seed', 'b', '--json', '--json'],
      /--seed is given twice.*\n--json is given twice/,
    ],
    [['compare', demo, '--seed='], /^--seed: is empty; give a value/],
    [
      ['sites', '--', '-x.csv'],
      /^--base is needed: Scenario that each site starts from \(YAML or JSON\)\n$/,
    ],
    [
      ['size', demo, '--all=maybe', '--json=yes', '--habits='],
      /^--all takes no value, and "maybe" was given; write --all alone, or leave it out\n--json takes no value, and "yes" was given.*\n--habits takes no value, and "" was given/,
    ],
    [['guide', demo, '--seats', '20', '--seats', '30'], /^--seats is given twice/],
    [['report', demo, '--out', ''], /^--out: the name is empty; name a folder/],
    [['report', demo, '--till', demo], /^--till is given without --map; give the map/],
    [['page', '--out', ''], /^--out: the name is empty; name a file/],
    [['page', '--out', 'README.md'], /^README\.md: is there already and is no letter by its name/],
    [
      ['till', csv, '--map', till, '--scenario', bakery, '--out', `./scenarios/../${bakery}`],
      /bakery-corner\.yaml: is what was given to read; give --out another name or folder/,
    ],
    [['measure', demo, '--read', ' '], /^--read: the name is empty; name a file/],
    [['check', '/dev/zero'], /^\/dev\/zero: is a device; name a file/],
    [['size', demo, '--day', '/dev/zero'], /^--day: \/dev\/zero: is a device; name a file/],
    [['report', demo, '--out', '/proc/none/deeper'], /^\/proc\/none\/deeper: cannot be written/],
    [['check', 'a\u001b[31m\u0007b.yaml'], /^a\[31mb\.yaml: no such file/],
    [
      ['size', demo, '--stock', 'cup=4,x=,cup=5'],
      /--stock: "x=" is not an item and a whole number of pieces[\s\S]*"cup" is given twice/,
    ],
    [['size', demo, '--stock', 'cup=4'], /--stock: "cup" is not an item of this scenario/],
    [['size', demo, '--level', '250'], /--level: "250" is not a share/],
    [['size', demo, '--day', 'LICENSE'], /LICENSE:1:1/],
    [['new', demo], /already exists/],
    [['new', 'somewhere.yaml', '--name', 'X'], /Nobody to ask: give --seats/],
  ])('%j', (args, message) => expectMistake(args, message));
});

describe('writing', () => {
  it('leaves nothing behind when it cannot write', () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'taken'), 'a file where a folder is wanted');
    expectMistake(
      ['report', demo, '--days', '100', '--out', join(folder, 'taken', 'deeper')],
      /cannot be written/,
    );
    expect(readdirSync(folder)).toEqual(['taken']);
  });

  it('refuses a till export with too few days, writing nothing', () => {
    const folder = emptyFolder();
    const out = join(folder, 'new.yaml');
    const rows = readFileSync(join(root, 'shared/till/bakery-quarter-hours.csv'), 'utf8')
      .split('\n')
      .slice(0, 150);
    writeFileSync(join(folder, 'short.csv'), rows.join('\n'));
    expectMistake(
      [
        'till',
        join(folder, 'short.csv'),
        '--map',
        'shared/till/bakery-saturdays.map.yaml',
        '--scenario',
        'scenarios/4-bakery-corner.yaml',
        '--out',
        out,
      ],
      /under 8 days/,
    );
    expect(readdirSync(folder)).toEqual(['short.csv']);
  });

  it('makes missing folders', () => {
    const folder = emptyFolder();
    mkdirSync(join(folder, 'a'));
    const { status } = cuptide([
      'new',
      join(folder, 'a/b/house.yaml'),
      '--name',
      'House',
      '--seats',
      '30',
      '--guests',
      '50',
      '--from',
      '07:00',
      '--to',
      '11:00',
      '--stay',
      '40 %',
      '--menu',
      'flat-white,tea',
      '--currency',
      'EUR',
      '--staff-hour',
      '21.50',
    ]);
    expect(status).toBe(0);
    expect(cuptide(['check', join(folder, 'a/b/house.yaml')]).out).toMatch(/no mistakes found/);
  });
});

describe('options as people write them', () => {
  /** What is answered, without how it was asked. */
  const answerAt = (level: string): object => {
    const { out } = cuptide(['size', demo, '--days', '100', '--json', '--level', level]);
    const { made: _, ...answer } = JSON.parse(out) as { made: unknown };
    return answer;
  };

  it('take a level as a share or a percentage', () => {
    const answer = answerAt('0.9');
    expect(answer).toMatchObject({ level: 0.9 });
    expect(answerAt('90')).toEqual(answer);
    expect(answerAt('90 %')).toEqual(answer);
  });

  it('take a file that begins with a hyphen after --', () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, '-x.yaml'), readFileSync(join(root, demo)));
    const { status, out } = cuptide(['check', '--', '-x.yaml'], folder);
    expect(status).toBe(0);
    expect(out).toMatch(/no mistakes found/);
  });
});

describe('an answer that nobody can take', () => {
  it('is no mistake of anybody when a pipe closes early', () => {
    const { stdout, stderr } = spawnSync(
      'sh',
      ['-c', `{ "${process.execPath}" "${command}" check --schema; echo "$?" >&2; } | head -c 1`],
      { cwd: root, encoding: 'utf8' },
    );
    expect(stdout).toBe('{');
    expect(stderr).toBe('0\n');
  });
});
