import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { Edit } from '../../src/scenario/edit.js';
import { checkEdit, editScenario } from '../../src/scenario/edit-scenario.js';
import { formGroupIds, formsOf, type FormField } from '../../src/scenario/input-forms.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario, type ReadResult } from '../../src/scenario/read-scenario.js';
import { typedAs } from '../../src/quantities/us-units.js';
import { valid } from './a-scenario.js';

const seed = { seed: 20 };
const options = { piecesPerRack: piecesPerRackOf };
const folder = new URL('../../scenarios/', import.meta.url);
const files = [
  ...readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8') })),
  { name: 'a.yaml', text: valid },
];

function read(text: string): Extract<ReadResult, { ok: true }> {
  const result = readScenario(text, 'a.yaml', options);
  if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join('\n'));
  return result;
}
const fieldsOf = (text: string): readonly FormField[] =>
  formsOf(read(text)).flatMap(({ parts }) => parts.flatMap(({ fields }) => fields));
const field = (text: string, path: string): FormField =>
  fieldsOf(text).find((one) => one.path === path)!;

/** What a box sends when its text is entered again as it stands. */
function entered({ at, kind, written, options: words }: FormField, text = written): Edit {
  if (kind === 'choice')
    return { kind: 'set', path: at, value: words.find(({ word }) => word === text)!.value };
  if (kind === 'text' || words.some(({ word }) => word === text))
    return { kind: 'set', path: at, value: text };
  return ['list', 'map', 'numbers', 'partySize'].includes(kind) || text.startsWith('{')
    ? { kind: 'set', path: at, flow: text }
    : { kind: 'set', path: at, value: typedAs(text, kind, 'metric', written) };
}

describe('forms of a scenario', () => {
  it.each(files)(
    'hold every input once, as it is written and with what it rests on: $name',
    ({ text }) => {
      const fields = fieldsOf(text);
      const paths = fields.map(({ path }) => path);
      expect(new Set(paths).size).toBe(paths.length);
      for (const { path, value, basis, range, source, origin } of read(text).inputs) {
        const found = fields.find((one) => one.path === path);
        expect(found, path).toMatchObject({ origin, mark: { basis, source } });
        if (typeof value !== 'object' && typeof value !== 'boolean')
          expect(found!.written).toBe(String(value));
        expect(found!.mark!.range === null).toBe(range === null);
      }
    },
  );

  it.each(files)('come in the order of the letter: $name', ({ text }) => {
    expect(formsOf(read(text)).map(({ id }) => id)).toEqual([...formGroupIds]);
  });

  it.each(files)('entered again as they stand, change nothing: $name', ({ text }) => {
    const written = fieldsOf(text).filter(
      ({ origin, path }) => origin === 'file' && path !== 'clearing',
    );
    expect(written.length).toBeGreaterThan(20);
    expect(
      editScenario(
        text,
        written.map((one) => entered(one)),
      ),
    ).toBe(text);
  });

  it.each(files)('written out where they were filled in, mean the same: $name', ({ text }) => {
    const given = fieldsOf(text).filter(({ origin }) => origin === 'default');
    const before = read(text).scenario;
    const all = editScenario(
      text,
      given.map((one) => entered(one)),
    );
    const { ware: wareBefore, ...rest } = before;
    const { ware, ...others } = read(all).scenario;
    expect(others).toEqual(rest);
    // Pieces a rack that are typical of a class are then the ware's own.
    expect(Object.keys(ware)).toEqual(Object.keys(wareBefore));
    expect(parse(all)).toMatchObject(parse(text) as object);
  });

  it('offer only words that the file may hold', () => {
    const choices = fc.constantFrom(
      ...files.flatMap(({ text }) =>
        fieldsOf(text)
          .filter(({ options: words, kind }) => words.length > 0 && kind === 'choice')
          .flatMap((one) =>
            one.options.map(({ word, value }) => ({
              text,
              path: one.path,
              at: one.at,
              word,
              value,
            })),
          ),
      ),
    );
    fc.assert(
      fc.property(choices, ({ text, path, at, value }) => {
        const checked = checkEdit(text, 'a.yaml', [{ kind: 'set', path: at, value }], options);
        // A rack may be too small for its ware, a quote lack its price: such a word is known, and refused for what it does.
        if (!checked.ok)
          for (const problem of checked.problems)
            if (problem.path === path)
              expect(problem.rule).not.toMatch(/none of|is not a (?:class|kind)|is not/);
      }),
      { ...seed, numRuns: 25 },
    );
  });

  it('tell a choice, a word in place of a number, a default and what is not said', () => {
    expect(field(valid, 'clearing')).toMatchObject({
      kind: 'choice',
      written: 'atOnce',
      options: [{ word: 'atOnce' }, { word: 'inRounds', value: {} }],
    });
    expect(field(valid, 'seats.heldUntilCleared')).toMatchObject({
      kind: 'choice',
      written: 'no',
      origin: 'default',
      optional: true,
    });
    expect(field(valid, 'washing.hands')).toMatchObject({
      kind: 'count',
      written: '1',
      options: [{ word: 'clearers' }, { word: 'makers' }, { word: 'unlimited' }],
    });
    expect(field(valid, 'washing.partLoadsEvery')).toMatchObject({
      kind: 'durationLaw',
      written: '',
      origin: 'none',
      mark: null,
      options: [{ word: 'never' }],
    });
    expect(field(valid, 'counter.making')).toMatchObject({
      kind: 'durationLaw',
      written: '45 s',
      origin: 'file',
      optional: true,
      mark: { basis: 'assumed', range: null, source: '' },
    });
    expect(field(valid, 'guests.dwell')).toMatchObject({
      kind: 'durationLaw',
      origin: 'default',
      written:
        '{ bySize: { 1: { lognormal: { mean: 22 min, sd: 10 min } }, 2: { lognormal: { mean: 42 min, sd: 18 min } } } }',
    });
    expect(field(valid, 'menu.tea.setting')).toMatchObject({
      kind: 'list',
      written: '[mug]',
      optional: false,
    });
    expect(field(valid, 'ware.saucer.like')).toMatchObject({ kind: 'choice', written: 'saucer' });
    expect(field(valid, 'staffHour')).toMatchObject({
      kind: 'amount',
      written: '20 EUR',
      optional: false,
    });
  });

  it('turn from clearing at once to rounds, and back', () => {
    const rounds = checkEdit(valid, 'a.yaml', [{ kind: 'set', path: ['clearing'], value: {} }]);
    if (!rounds.ok) throw new Error('refused');
    expect(field(rounds.text, 'clearing').written).toBe('inRounds');
    expect(field(rounds.text, 'clearing.every')).toMatchObject({
      written: 'about 10 min',
      origin: 'default',
    });
    expect(editScenario(rounds.text, [{ kind: 'set', path: ['clearing'], value: 'atOnce' }])).toBe(
      valid,
    );
  });

  it('say what can be added, and the addition is accepted', () => {
    const adds = formsOf(read(valid)).flatMap((group) => (group.adds === null ? [] : [group.adds]));
    expect(adds.map(({ thing }) => thing)).toEqual(['drink', 'ware', 'machine']);
    for (const { thing, at, taken, classes } of adds) {
      for (const { id } of classes) {
        const [key, value] = {
          drink: ['cocoa', { share: '0 %', setting: [id] }],
          ware: ['another', { like: id }],
          machine: [taken.length, { class: id }],
        }[thing] as [string | number, unknown];
        const checked = checkEdit(
          valid,
          'a.yaml',
          [{ kind: 'add', path: [...at, key], value }],
          options,
        );
        expect(checked, id).toMatchObject({ ok: true });
        const gone = checked.ok
          ? checkEdit(checked.text, 'a.yaml', [{ kind: 'remove', path: [...at, key] }], options)
          : checked;
        expect(gone).toEqual({ ok: true, text: valid });
      }
    }
  });

  it('keep the last of the ware, drinks and machines', () => {
    const machines = formsOf(read(valid))
      .find(({ id }) => id === 'washing')!
      .parts.filter(({ at }) => at.length > 0);
    expect(machines.map(({ name, canGo }) => [name, canGo])).toEqual([
      ['Undercounter machine', false],
    ]);
    expect(
      formsOf(read(valid))
        .find(({ id }) => id === 'menu')!
        .parts.map(({ name, canGo }) => [name, canGo]),
    ).toEqual([
      ['Flat white', true],
      ['Tea', true],
    ]);
  });
});
