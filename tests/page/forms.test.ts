import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { additionOf, editOf, freshId, markEditOf } from '../../src/page/forms/edit-of.js';
import { shownValue } from '../../src/page/forms/field-box.js';
import { choiceWord, labelOf, partName } from '../../src/page/forms/labels.js';
import { inOrder, joined, withChange, type Changes } from '../../src/page/forms/pending.js';
import { newThing } from '../../src/page/forms/new-thing.js';
import { problemOf } from '../../src/page/forms/problems.js';
import { stepped } from '../../src/page/forms/step.js';
import { generalPath } from '../../src/scenario/name-maps.js';
import { wordsOf } from '../../src/tell/input-name.js';
import { english } from '../../src/tell/words.js';
import type { Edit } from '../../src/scenario/edit.js';
import { checkEdit, editScenario } from '../../src/scenario/edit-scenario.js';
import { formsOf, type FormField } from '../../src/scenario/input-forms.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';

const seed = { seed: 20 };
const options = { piecesPerRack: piecesPerRackOf };
const folder = new URL('../../scenarios/', import.meta.url);
const files = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => {
    const text = readFileSync(new URL(name, folder), 'utf8');
    const read = readScenario(text, name, options);
    if (!read.ok) throw new Error(name);
    return { name, text, groups: formsOf(read) };
  });
const parts = files.flatMap(({ groups }) => groups.flatMap((group) => group.parts));
const fields = files.flatMap(({ text, groups }) =>
  groups.flatMap((group) =>
    group.parts.flatMap((part) => part.fields.map((field) => ({ text, field }))),
  ),
);
const any = (kind: string, more: Partial<FormField> = {}): FormField => ({
  path: 'a.b',
  at: ['a', 'b'],
  kind,
  written: '',
  options: [],
  origin: 'file',
  optional: false,
  mark: null,
  ...more,
});

describe('a reserve shelf', () => {
  it('can be the first thing said of where pieces stand', () => {
    const { text, groups } = files.find((one) => !/^storage:/m.test(one.text))!;
    const addition = groups
      .flatMap((group) => group.parts.flatMap((part) => part.adds))
      .find(({ at }) => at.join('.') === 'storage.reserve')!;
    const edit = newThing(addition, '', false, ['900 mm', '400 mm', '2'], 'metric');
    const read = readScenario(editScenario(text, [edit]), 'with-shelf.yaml', options);
    expect(read.ok && read.scenario.storage).toMatchObject({ top: {}, reserve: { shelves: 2 } });
  });
});

describe('arrow keys in a box', () => {
  it.each([
    ['26', 1, '27'],
    ['120 s', 1, '130 s'],
    ['100 s', -1, '99 s'],
    ['9 min', -1, '8 min'],
    ['35 %', 1, '36 %'],
    ['5.20 EUR', 1, '5.30 EUR'],
    ['0.95', 1, '0.96'],
    ['1.05', -1, '0.95'],
    ['3.4 in', 1, '3.5 in'],
    ['0', -1, '0'],
    ['0 min', 1, '1 min'],
    ['0.3', -1, '0.2'],
    ['0.05', -1, '0.04'],
    ['64 / h', 1, '65 / h'],
    ['1 staff hours', -1, '0 staff hours'],
    ['.5 kWh', 1, '0.6 kWh'],
  ] as const)('%s, %i → %s', (text, direction, next) => {
    expect(stepped(text, direction)).toBe(next);
  });

  it('leave alone what is no number: names, laws, times of day, dates', () => {
    for (const text of [
      '',
      'unlimited',
      '{ lognormal: { mean: 3 min } }',
      '07:30',
      '2026-03-02',
      '[3, 4]',
      '1e3 s',
    ])
      expect(stepped(text, 1)).toBeNull();
  });

  it('go up and down again to where they were, and never below zero', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 99_999 }),
        fc.constantFrom(0, 1, 2, 3),
        fc.constantFrom(' min', '', ' %', ' EUR'),
        (whole, decimals, unit) => {
          const text = `${(whole / 10 ** decimals).toFixed(decimals)}${unit}`;
          const up = stepped(text, 1)!;
          expect(Number.parseFloat(up)).toBeGreaterThan(Number.parseFloat(text));
          expect(up.endsWith(unit)).toBe(true);
          // Within a power of ten; across one, the step itself changes.
          const power = (one: string): number =>
            Math.floor(Math.log10(Number.parseFloat(one) * (1 - 1e-9)));
          if (power(up) === Math.floor(Math.log10(Number.parseFloat(text)) + 1e-12))
            expect(Number.parseFloat(stepped(up, -1)!)).toBeCloseTo(Number.parseFloat(text), 9);
          let down = text;
          for (let i = 0; i < 300; i += 1) down = stepped(down, -1)!;
          expect(Number.parseFloat(down)).toBeGreaterThanOrEqual(0);
        },
      ),
      { ...seed, numRuns: 200 },
    );
  });
});

describe('what is typed in a box', () => {
  it('is no change if it is what the box says already, in either units', () => {
    for (const { field } of fields)
      for (const units of ['metric', 'us'] as const)
        expect(
          editOf(field, ` ${shownValue(field, units)} `, units, shownValue(field, units)),
          field.path,
        ).toBeNull();
  });

  it('is stored with the unit it was typed in, and read back so', () => {
    const lengths = fields.filter(
      ({ field: { kind, origin, at } }) =>
        ['length', 'mass', 'volume'].includes(kind) && origin !== 'none' && at[0] !== 'ware',
    );
    const masses = fields.filter(
      ({ field: { kind, origin } }) => kind === 'mass' && origin !== 'none',
    );
    expect(lengths.length).toBeGreaterThan(5);
    for (const { text, field } of [...lengths, ...masses]) {
      const shown = shownValue(field, 'us');
      const unit = shown.replace(/^[\d.]+ /, '');
      const edit = editOf(field, '7.25', 'us', shown);
      expect(edit).toEqual({ kind: 'set', path: field.at, value: `7.25 ${unit}` });
      expect(editScenario(text, [edit!])).toContain(`7.25 ${unit}`);
    }
  });

  it('becomes a number, a word, a law, a list, text, or nothing', () => {
    const set = (more: object): object => ({ kind: 'set', path: ['a', 'b'], ...more });
    const unlimited = [{ word: 'unlimited', value: 'unlimited' }];
    expect(editOf(any('count', { written: '2', options: unlimited }), '3', 'us', '2')).toEqual(
      set({ value: 3 }),
    );
    expect(
      editOf(any('count', { written: '2', options: unlimited }), 'unlimited', 'us', '2'),
    ).toEqual(set({ value: 'unlimited' }));
    expect(
      editOf(
        any('durationLaw', { written: '50 s' }),
        '{ gamma: { mean: 3 min, sd: 1 min } }',
        'us',
        '50 s',
      ),
    ).toEqual(set({ flow: '{ gamma: { mean: 3 min, sd: 1 min } }' }));
    expect(editOf(any('durationLaw', { written: '50 s' }), '40', 'us', '50 s')).toEqual(
      set({ value: '40 s' }),
    );
    // A duration where a law stands is its new mean.
    expect(
      editOf(any('durationLaw', { written: 'about 10 min' }), '12', 'us', 'about 10 min'),
    ).toEqual(set({ value: '12 min', asMean: true }));
    expect(editOf(any('numbers', { written: '[1, 2]' }), '3, 4', 'us', '[1, 2]')).toEqual(
      set({ flow: '[3, 4]' }),
    );
    const cups = {
      options: [
        { word: 'takeaway', value: 'takeaway' },
        { word: 'cup', value: 'cup', name: 'Cup' },
      ],
    };
    expect(
      editOf(any('list', { written: '[mug]', ...cups }), 'cup, saucer', 'us', '[mug]'),
    ).toEqual(set({ flow: '[cup, saucer]' }));
    expect(editOf(any('list', { written: '[mug]', ...cups }), 'cup', 'us', '[mug]')).toEqual(
      set({ flow: '[cup]' }),
    );
    expect(editOf(any('list', { written: '[mug]', ...cups }), 'takeaway', 'us', '[mug]')).toEqual(
      set({ value: 'takeaway' }),
    );
    expect(editOf(any('text', { written: 'Cup' }), '[12]', 'us', 'Cup')).toEqual(
      set({ value: '[12]' }),
    );
    expect(
      editOf(
        any('choice', {
          written: 'no',
          options: [
            { word: 'yes', value: true },
            { word: 'no', value: false },
          ],
        }),
        'yes',
        'us',
        'no',
      ),
    ).toEqual(set({ value: true }));
    expect(
      editOf(any('duration', { written: '5 min', optional: true }), ' ', 'us', '5 min'),
    ).toEqual({ kind: 'remove', path: ['a', 'b'] });
    expect(
      editOf(
        any('duration', { written: '5 min', optional: true, origin: 'default' }),
        '',
        'us',
        '5 min',
      ),
    ).toBeNull();
    expect(editOf(any('duration', { written: '5 min' }), '', 'us', '5 min')).toEqual(
      set({ value: '' }),
    );
  });

  it('marks a value: basis, source, a range in the unit shown, a range of laws', () => {
    expect(markEditOf(any('length'), { basis: 'measured' }, 'us')).toEqual({
      kind: 'set',
      path: ['a', 'b'],
      basis: 'measured',
    });
    expect(markEditOf(any('length'), { range: ['3', '4 in'] }, 'us', ['2.9 in', ''])).toEqual({
      kind: 'set',
      path: ['a', 'b'],
      range: ['3 in', '4 in'],
    });
    expect(markEditOf(any('count'), { range: ['3', '4'] }, 'us')).toEqual({
      kind: 'set',
      path: ['a', 'b'],
      range: [3, 4],
    });
    expect(
      markEditOf(any('durationLaw'), { range: ['3 min', '{ exponential: 9 min }'] }, 'us'),
    ).toEqual({
      kind: 'set',
      path: ['a', 'b'],
      range: { flow: '[3 min, { exponential: 9 min }]' },
    });
    expect(markEditOf(any('count'), { range: null }, 'us')).toEqual({
      kind: 'set',
      path: ['a', 'b'],
      range: null,
    });
  });
});

describe('something new', () => {
  it('gets an id that the schema takes and nobody has, whatever its name', () => {
    const { text, groups } = files[0]!;
    const adds = groups.find(({ id }) => id === 'ware')!.adds!;
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ maxLength: 90 }),
          fc.constantFrom(
            'Large cup',
            'takeaway',
            'unlimited',
            '',
            '</script>',
            'Ｔａｓｓｅ',
            'été',
            '__proto__',
            'constructor',
          ),
        ),
        (name) => {
          const id = freshId(name, adds.taken);
          expect([...adds.taken, 'takeaway', 'unlimited']).not.toContain(id);
          const edit = additionOf(adds, name.trim() === '' ? 'x' : name, 'medium-cup');
          expect(checkEdit(text, 'a.yaml', [edit], options)).toMatchObject({ ok: true });
        },
      ),
      { ...seed, numRuns: 60 },
    );
    expect(freshId('Large cup', ['large-cup', 'large-cup-2'])).toBe('large-cup-3');
  });
});

describe('labels', () => {
  it('name every field of every scenario in words, and no two of a part alike', () => {
    expect([
      ...new Set(
        fields
          .map(({ field }) => field.of ?? field.at)
          .filter((at) => wordsOf(at) === null)
          .map(generalPath),
      ),
    ]).toEqual([]);
    for (const part of parts) {
      const labels = part.fields.map((field) => labelOf(field, part));
      expect(
        labels.filter((label, i) => labels.indexOf(label) !== i),
        part.at.join('.'),
      ).toEqual([]);
    }
  });

  it('word every choice', () => {
    const known = new Set(Object.keys(english.forms.choices));
    const words = fields
      .filter(({ field }) => field.kind === 'choice')
      .flatMap(({ field }) => field.options.filter(({ name }) => name === undefined));
    // Words that mean the same to a reader as in the file: shapes, materials.
    const plain =
      /^(cup|glass|saucer|spoon|plate|flat|round|square|oval|milk|water|nothing|ceramic|steel|paper|bowl|toughened|heat-resistant|used|thrown)$/;
    expect(
      [...new Set(words.map(({ word }) => word))].filter(
        (word) => !known.has(word) && !plain.test(word),
      ),
    ).toEqual([]);
    expect(choiceWord({ word: 'no' })).toBe('no');
  });

  it('tell machines by number and shorten names', () => {
    expect(partName({ at: ['washing', 'machines', 1], name: 'Hood machine' })).toBe(
      '2. Hood machine',
    );
    expect(partName({ at: ['washing', 'machines', 0], name: '' })).toBe('Machine 1');
    expect(partName({ at: ['menu', 'x'], name: 'a'.repeat(10_000) }).length).toBeLessThanOrEqual(
      40,
    );
  });
});

describe('changes that wait for each other', () => {
  const set = (name: string, value: unknown): Edit => ({
    kind: 'set',
    path: ['menu', name, 'share'],
    value,
  });
  it('keep the latest of each box, and take out from the end of lists, after all else', () => {
    const none: Changes = new Map();
    const all = withChange(
      withChange(withChange(none, 'a', set('a', 1)), 'b', set('b', 1)),
      'a',
      set('a', 2),
    );
    expect(inOrder(all)).toEqual([set('b', 1), set('a', 2)]);
    expect(inOrder(withChange(all, 'a', null))).toEqual([set('b', 1)]);
    expect(inOrder(joined(all, new Map([['b', set('b', 3)]])))).toEqual([set('a', 2), set('b', 3)]);
    const gone = (i: number): Edit => ({ kind: 'remove', path: ['washing', 'machines', i] });
    expect(
      inOrder(
        new Map([
          ['x', gone(0)],
          ['y', gone(2)],
          ['z', set('a', 1)],
        ]),
      ),
    ).toEqual([set('a', 1), gone(2), gone(0)]);
  });

  it('are accepted together where each alone is refused', () => {
    const { text } = files.find(({ name }) => name.startsWith('4'))!;
    const [a, b] = [set('coffee', '60 %'), set('tea', '34 %')] as const;
    for (const one of [a, b]) expect(checkEdit(text, 'a.yaml', [one], options).ok).toBe(false);
    expect(checkEdit(text, 'a.yaml', [a, b], options).ok).toBe(true);
  });
});

describe('a problem', () => {
  it('stands beside the box of its value, not beside one with a longer or shorter name', () => {
    const problems = [
      { path: 'guests.dwell.lognormal.mean', line: 1, message: 'm' },
      { path: 'menu', line: 2, message: 'n' },
      { path: '', line: 3, message: 'o' },
    ];
    expect(problemOf({ path: 'guests.dwell' }, problems)).toBe('m');
    expect(problemOf({ path: 'guests.dwel' }, problems)).toBeNull();
    expect(problemOf({ path: 'menu.tea.share' }, problems)).toBeNull();
    expect(
      problemOf({ path: 'menu.tea.setting' }, [
        { path: 'menu.tea.setting[0]', line: 1, message: 'p' },
      ]),
    ).toBe('p');
  });
});
