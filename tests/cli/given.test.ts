import { describe, expect, it } from 'vitest';
import { commands } from '../../src/cli/commands/all.js';
import { optionsOf } from '../../src/cli/command-options.js';
import { checkGiven } from '../../src/cli/given.js';
import { MistakeError } from '../../src/cli/mistakes.js';

const all = commands.map((command) => ({
  name: String(command.command).split(' ')[0]!,
  options: () => optionsOf(command),
}));
const said = (...given: string[]): string => {
  try {
    checkGiven(given, all);
    return '';
  } catch (error) {
    if (!(error instanceof MistakeError)) throw error;
    return error.message;
  }
};

describe('arguments that cannot be taken', () => {
  it.each([
    [[], 'Name a command; cuptide --help lists them.'],
    [['siz', 'f'], '"siz" is not a command; did you mean "size"?\nSee cuptide --help.'],
    [
      ['--jsn'],
      '"--jsn": name the command first, such as cuptide size FILE; cuptide --help lists them',
    ],
    [['size'], 'Name the file: cuptide size FILE'],
    [['sites', '-x.csv'], /^-x\.csv is not an option of sites; before a file .*\nName the table/],
    [['size', 'f', '--sead', '3'], '--sead is not an option of size; did you mean --seed?'],
    [['size', '--sead', '3'], '--sead is not an option of size; did you mean --seed?'],
    [['size', 'f', '-seed', '3'], '-seed is not an option of size; did you mean --seed?'],
    [['size', 'f', '--seed.x=3'], '--seed.x is not an option of size; did you mean --seed?'],
    [['size', 'f', '-out', 'x'], /^-out is not an option of size but of till, compare/],
    [['size', 'f', '--SEED=3'], '--SEED is not an option of size; did you mean --seed?'],
    [
      ['compare', 'f', '--equalGuests'],
      '--equalGuests is not an option of compare; did you mean --equal-guests?',
    ],
    [
      ['size', 'f', '--seats', '3'],
      '--seats is not an option of size but of new, guide; cuptide size --help lists those it has',
    ],
    [['report', 'f', '--no-out'], '--no-out is not an option of report; leave out --out'],
    [['check', 'f', '--no-schema'], '--no-schema is not an option of check; leave out --schema'],
    [
      ['size', 'f', '--constructor'],
      /^--constructor is not an option of size; cuptide size --help/,
    ],
    [['size', 'f', '--__proto__=3'], /^--__proto__ is not an option of size/],
    [['size', 'f', '--=3'], /^--=3 is not an option of size/],
    [['size', 'f', '--days'], '--days needs a value'],
    [['size', 'f', '--days', '--json'], '--days needs a value'],
    [
      ['size', 'f', '--seed', '-x'],
      /^--seed needs a value; one that begins .* --seed=-x\n-x is not/,
    ],
    [['size', 'f', '--json=1'], /^--json takes no value, and "1" was given; write --json alone/],
    [['size', 'f', '--seed=a', '--seed', 'b'], '--seed is given twice; give it once'],
    [['size', 'f', 'g'], /^"g" is one too many: size takes one file/],
    [['size', 'f', '--', 'g'], /^"g" is one too many: size takes one file/],
    [['check', '--file=f'], /^--file is not an option of check; /],
    [['size', 'f', '-'], /^"-" is one too many/],
    [['page', 'f'], '"f": page takes no file; leave it out'],
    [
      ['backtest', '--sead=3', '--json=x', '--days'],
      /^--sead is not .*\n--json takes no value.*\n--days needs a value\nName the file.*\n--till is needed: Export of the till \(CSV\)\n--map is needed: What the columns mean/,
    ],
  ])('%j', (given, message) => expect(said(...given)).toMatch(message));

  it('are shown without what would fill the screen', () => {
    expect(said('size', 'f', 'x'.repeat(5000)).length).toBeLessThan(200);
    expect(said('size', 'f', `--${'x'.repeat(5000)}`).length).toBeLessThan(200);
  });
});

describe('arguments that can', () => {
  it.each([
    [['size', 'f', '--days', '-5']],
    [['size', '--seed', '', 'f']],
    [['size', 'f', '--seed=-x', '--json', '--all=false']],
    [['size', 'f', '--json', 'true']],
    [['check', '--schema']],
    [['measure', 'f', '--read', 'a.csv', '--read', 'b.csv']],
    [['size', 'f', 'g', '--help']],
    [['--version']],
    [['page']],
  ])('%j', (given) => expect(checkGiven(given, all)).toEqual(given));

  it('are the command first, and files after -- that no parser takes for options', () => {
    expect(checkGiven(['--json', 'size', '--', '-x.yaml'], all)).toEqual(
      ['size', '--json', '--', './-x.yaml'].filter((one) => one !== '--'),
    );
  });
});

describe('what a command takes', () => {
  it('is known without the option parser: every command names its file and its options', () => {
    for (const { name, options } of all) {
      const { file, options: known } = options();
      expect(known.has('help'), name).toBe(true);
      expect(file === null, name).toBe(name === 'page');
    }
    const { options } = optionsOf(commands.find(({ command }) => command === 'backtest <file>')!);
    expect([...options].filter(([, { needed }]) => needed).map(([name]) => name)).toEqual([
      'till',
      'map',
    ]);
    expect(options.get('json')).toEqual({
      isFlag: true,
      needed: false,
      about: 'Print the answer as one JSON object',
      isList: false,
    });
  });
});
