import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { EditRefused, type Edit } from '../../src/scenario/edit.js';
import { checkEdit, editScenario } from '../../src/scenario/edit-scenario.js';
import { flowText, readFlow } from '../../src/scenario/flow-text.js';
import type { Input } from '../../src/scenario/inputs.js';
import { pathKey } from '../../src/scenario/path.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario, type ReadResult } from '../../src/scenario/read-scenario.js';
import { commentsIn } from '../../src/scenario/text-places.js';
import { unwrap, valueAt } from '../../src/scenario/tree.js';
import { valid } from './a-scenario.js';

const seed = { seed: 20 };
const folder = new URL('../../scenarios/', import.meta.url);
const files = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8') }));

function read(text: string): Extract<ReadResult, { ok: true }> {
  const result = readScenario(text, 'a.yaml', { piecesPerRack: piecesPerRackOf });
  if (!result.ok)
    throw new Error(result.problems.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return result;
}

/** What a file says of a place, without marks. */
const told = (text: string, path: readonly (string | number)[]): unknown =>
  valueAt(unwrap(read(text).raw).tree, path);
/** Groups without anything in them say nothing. */
const filledIn = (tree: unknown): unknown =>
  JSON.parse(JSON.stringify(tree), (_, value: unknown) =>
    typeof value === 'object' &&
    value !== null &&
    !Array.isArray(value) &&
    Object.keys(value).length === 0
      ? undefined
      : value,
  );

/** Every number of a written value by a factor, so that sums and kinds hold; money keeps two decimals. */
function scaled(value: unknown, factor: number): unknown {
  if (typeof value === 'number')
    return Number.isInteger(value)
      ? Math.max(1, Math.round(value * factor))
      : Number((value * factor).toPrecision(6));
  if (typeof value === 'string')
    return value.replace(/^[\d.]+/, (digits) =>
      String(Number((Number(digits) * factor).toFixed(2))),
    );
  if (Array.isArray(value)) return value.map((item) => scaled(item, factor));
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(
      Object.entries(value).map(([key, item]) => [key, scaled(item, factor)]),
    );
  return value;
}

/** Changes that give an input another value and leave a valid scenario. */
function otherValue(
  { at, value, range }: Input,
  factor: number,
  all: readonly Input[],
): readonly (Edit & { kind: 'set'; value: unknown })[] {
  const key = pathKey(at);
  if (range !== null) return [{ kind: 'set', path: at, value: range[factor > 1 ? 1 : 0] }];
  if (at.at(-1) === 'partySize')
    return [{ kind: 'set', path: at, value: { 1: '41.5 %', 2: '58.5 %' } }];
  if (at[0] === 'menu' && at[2] === 'share') {
    const other = all.find(
      (one) => one.at[0] === 'menu' && one.at[2] === 'share' && pathKey(one.at) !== key,
    )!;
    return [
      { kind: 'set', path: at, value: other.value },
      { kind: 'set', path: other.at, value },
    ];
  }
  if (typeof value === 'boolean') return [{ kind: 'set', path: at, value: !value }];
  const words = [
    ['leave', 'takeaway', 'wait'],
    ['regular', 'poisson'],
    ['first', 'inTurn', 'last'],
    ['clearers', 'makers'],
  ].find((some) => some.includes(String(value)));
  if (words) return [{ kind: 'set', path: at, value: words.find((word) => word !== value) }];
  if (at[0] === 'racks' && at[1] === 'families') return [{ kind: 'set', path: at, value: 'open' }];
  if (value === 'unlimited' || value === 'assured')
    return [{ kind: 'set', path: at, value: value === 'unlimited' ? 7 : 'none' }];
  if (typeof value === 'string' && /^\d{4}-/.test(value))
    return [{ kind: 'set', path: at, value: '2031-01-02' }];
  return [
    {
      kind: 'set',
      path: at,
      value: scaled(
        value,
        /share|staysIn|secondDrink|fill|level|tax|discount/.test(key) ? 0.8 : factor,
      ),
    },
  ];
}

describe('an input set to another value', () => {
  for (const { name, text } of files) {
    const before = read(text);
    const inputs = before.inputs;
    // Pieces a rack and the width of a rim decide whether ware fits at all: the reading tells, so these are left to the checks.
    const free = inputs.filter(
      ({ at }) =>
        !(
          at[0] === 'ware' &&
          ['rim', 'foot', 'height', 'handle', 'handleWidth', 'well', 'family'].includes(
            String(at[2]),
          )
        ),
    );
    const originOf = new Map(inputs.map(({ at, origin }) => [pathKey(at), origin]));
    const valueOf = new Map(inputs.map(({ at, value }) => [pathKey(at), value]));
    it(`is read back exactly, changes no other, and back again gives the same file: ${name}`, () => {
      let told = 0;
      fc.assert(
        fc.property(fc.constantFrom(...free), fc.constantFrom(0.9, 1.25), (input, factor) => {
          const edits = otherValue(input, factor, inputs);
          const changed = editScenario(text, edits);
          const result = readScenario(changed, name, { piecesPerRack: piecesPerRackOf });
          const tree = result.ok ? result.raw : parse(changed);
          for (const { path, value } of edits)
            expect(valueAt(unwrap(tree).tree, path)).toEqual(value);
          expect(commentsIn(changed)).toEqual(commentsIn(text));
          // A value may be held in bounds by another (a price by its breaks); then there is no scenario to compare.
          if (result.ok) {
            told += 1;
            const touched = new Set(edits.map(({ path }) => pathKey(path)));
            const others = (list: readonly Input[]) =>
              list
                .filter(({ at }) => !touched.has(pathKey(at)))
                .map(({ path, value, basis, range, origin }) =>
                  JSON.stringify([path, value, basis, range, origin]),
                )
                .toSorted();
            expect(others(result.inputs)).toEqual(others(inputs));
          }
          const back = editScenario(
            changed,
            edits.map(({ path }) =>
              originOf.get(pathKey(path)) === 'default'
                ? { kind: 'remove', path }
                : { kind: 'set', path, value: valueOf.get(pathKey(path)) },
            ),
          );
          expect(filledIn(parse(back))).toEqual(filledIn(parse(text)));
          if (
            edits.every(
              ({ path }) =>
                typeof valueOf.get(pathKey(path)) === 'string' &&
                originOf.get(pathKey(path)) === 'file',
            )
          )
            expect(back).toBe(text);
        }),
        { ...seed, numRuns: 30 },
      );
      expect(told).toBeGreaterThan(20);
    });
  }

  it('keeps a JSON file JSON, indented as it was', () => {
    const json = `${JSON.stringify(parse(valid), null, 2)}\n`;
    const set = editScenario(json, [
      { kind: 'set', path: ['counter', 'making'], value: '50 s' },
      { kind: 'set', path: ['seats', 'whenFull'], value: 'leave' },
      { kind: 'add', path: ['washing', 'machines', 1], value: { class: 'hood' } },
      { kind: 'set', path: ['guests', 'staysIn'], basis: 'measured', source: 'door "A"' },
    ]);
    const tree = JSON.parse(set) as Record<string, Record<string, unknown>>;
    expect(tree['counter']!['making']).toBe('50 s');
    expect(tree['seats']).toEqual({ count: 20, whenFull: 'leave' });
    expect(tree['washing']!['machines']).toEqual([{ class: 'undercounter' }, { class: 'hood' }]);
    expect(tree['guests']!['staysIn']).toEqual({
      value: '40 %',
      basis: 'measured',
      source: 'door "A"',
    });
    expect(set.replace('"count": 20,\n    "whenFull": "leave"', '"count": 20')).not.toBe(set);
    const back = editScenario(json, [{ kind: 'set', path: ['counter', 'making'], value: '50 s' }]);
    expect(back).toBe(json.replace('"making": "45 s"', '"making": "50 s"'));
  });

  it('keeps marks unless told otherwise', () => {
    const marked = valid.replace(
      'staysIn: 40 %',
      'staysIn: { value: 40 %, basis: measured, range: [30 %, 60 %], source: tally } # counted',
    );
    expect(
      editScenario(marked, [{ kind: 'set', path: ['guests', 'staysIn'], value: '45 %' }]),
    ).toBe(marked.replace('value: 40 %', 'value: 45 %'));
    const all = editScenario(marked, [
      {
        kind: 'set',
        path: ['guests', 'staysIn'],
        value: '20 %',
        basis: 'assumed',
        range: null,
        source: '',
      },
    ]);
    expect(all).toBe(
      marked.replace(
        '{ value: 40 %, basis: measured, range: [30 %, 60 %], source: tally }',
        '{ value: 20 %, basis: assumed }',
      ),
    );
  });

  it('lets a range go along with a value that leaves it, on its own side', () => {
    const marked = valid
      .replace('making: 45 s', 'making: { value: 45 s, basis: measured, range: [40 s, 1 min] }')
      .replace('staysIn: 40 %', 'staysIn: { value: 40 %, range: [30 %, 60 %] }');
    const set = (path: readonly string[], value: unknown): string =>
      editScenario(marked, [{ kind: 'set', path, value }]);
    expect(set(['counter', 'making'], '90 s')).toBe(
      marked.replace('value: 45 s', 'value: 90 s').replace('[40 s, 1 min]', '[40 s, 90 s]'),
    );
    expect(set(['guests', 'staysIn'], 0.1)).toBe(
      marked.replace('value: 40 %', 'value: 0.1').replace('[30 %, 60 %]', '[0.1, 60 %]'),
    );
    expect(set(['counter', 'making'], '0.9 min')).toBe(
      marked.replace('value: 45 s', 'value: 0.9 min'),
    );
    expect(set(['counter', 'making'], 'soon')).toBe(marked.replace('value: 45 s', 'value: soon'));
    for (const text of [set(['counter', 'making'], '90 s'), set(['guests', 'staysIn'], 0.1)])
      expect(read(text).ok).toBe(true);
    expect(
      editScenario(marked, [
        {
          kind: 'set',
          path: ['counter', 'making'],
          value: '2 min',
          range: { flow: '[1 min, 3 min]' },
        },
      ]),
    ).toBe(
      marked.replace('value: 45 s', 'value: 2 min').replace('[40 s, 1 min]', '[1 min, 3 min]'),
    );
  });

  it('marks a plain value, in flow and in block form, with all that was said beside it', () => {
    expect(
      editScenario(valid, [
        { kind: 'set', path: ['counter', 'making'], basis: 'measured', range: ['40 s', '1 min'] },
      ]),
    ).toBe(
      valid.replace(
        'making: 45 s',
        'making: { value: 45 s, basis: measured, range: [40 s, 1 min] }',
      ),
    );
    const block = valid.replace(
      '  staysIn: 40 %\n',
      '  staysIn: 40 %\n  dwell:\n    # timed\n    lognormal:\n      mean: 40 min # so\n      sd: 9 min\n',
    );
    expect(
      editScenario(block, [
        { kind: 'set', path: ['guests', 'dwell'], basis: 'measured', source: 'clock' },
      ]),
    ).toBe(
      valid.replace(
        '  staysIn: 40 %\n',
        '  staysIn: 40 %\n  dwell:\n    # timed\n    value:\n      lognormal:\n        mean: 40 min # so\n        sd: 9 min\n    basis: measured\n    source: clock\n',
      ),
    );
  });
});

describe('what the file leaves out', () => {
  it('is written where it belongs', () => {
    expect(
      editScenario(valid, [{ kind: 'set', path: ['seats', 'whenFull'], value: 'leave' }]),
    ).toBe(valid.replace('{ count: 20 }', '{ count: 20, whenFull: leave }'));
    expect(
      editScenario(valid, [{ kind: 'set', path: ['washing', 'partLoadWait'], value: '9 min' }]),
    ).toBe(`${valid}  partLoadWait: 9 min\n`);
    expect(editScenario(valid, [{ kind: 'set', path: ['level'], value: '99 %' }])).toBe(
      valid.replace('staffHour: 20 EUR\n', 'staffHour: 20 EUR\nlevel: 99 %\n'),
    );
    const bare = valid.replace('counter: { makers: 2, making: 45 s }\n', '');
    expect(editScenario(bare, [{ kind: 'set', path: ['counter', 'making'], value: '30 s' }])).toBe(
      bare.replace('seats: { count: 20 }\n', 'seats: { count: 20 }\ncounter: { making: 30 s }\n'),
    );
  });

  it('is written whole where a part of it changes', () => {
    const set = editScenario(valid, [
      { kind: 'set', path: ['guests', 'dwell', 'bySize', '1'], value: '20 min' },
    ]);
    expect(told(set, ['guests', 'dwell'])).toEqual({
      bySize: { 1: '20 min', 2: { lognormal: { mean: '42 min', sd: '18 min' } } },
    });
  });

  it('takes its default with its new mark', () => {
    const set = editScenario(valid, [
      { kind: 'set', path: ['guests', 'secondDrink'], basis: 'measured' },
    ]);
    expect(read(set).inputs.find(({ path }) => path === 'guests.secondDrink')).toMatchObject({
      value: '10 %',
      basis: 'measured',
      origin: 'file',
    });
  });
});

describe('things of the café', () => {
  it('come, go and are renamed, and the rest of the file stays', () => {
    const added = editScenario(valid, [
      { kind: 'add', path: ['menu', 'mocha'], value: { share: '0 %', setting: ['cup', 'saucer'] } },
      { kind: 'add', path: ['washing', 'machines', 1], value: { class: 'hood' } },
      { kind: 'rename', path: ['menu', 'mocha'], name: 'Mocha: "large", #1' },
    ]);
    expect(added).toBe(
      valid
        .replace(
          'fallBacks: [takeaway] }\n',
          'fallBacks: [takeaway] }\n  mocha: { share: 0 %, setting: [cup, saucer], name: "Mocha: \\"large\\", #1" }\n',
        )
        .replace(
          '    - { class: undercounter }\n',
          '    - { class: undercounter }\n    - { class: hood }\n',
        ),
    );
    expect(
      editScenario(added, [
        { kind: 'remove', path: ['washing', 'machines', 1] },
        { kind: 'remove', path: ['menu', 'mocha'] },
      ]),
    ).toBe(valid);
  });

  it('go whole: with their marks, and the last one of a list', () => {
    const marked = valid.replace('making: 45 s', 'making: { value: 45 s, basis: measured }');
    expect(editScenario(marked, [{ kind: 'remove', path: ['counter', 'making'] }])).toBe(
      valid.replace(', making: 45 s', ''),
    );
    expect(
      parse(editScenario(valid, [{ kind: 'remove', path: ['washing', 'machines', 0] }])),
    ).toMatchObject({ washing: { machines: [] } });
  });

  it('are refused where they are already there, are not there, or leave a gap', () => {
    const why = (edit: Edit): string => {
      try {
        return editScenario(valid, [edit]);
      } catch (error) {
        if (error instanceof EditRefused) return error.flaws.map(({ rule }) => rule).join();
        throw error;
      }
    };
    expect(why({ kind: 'add', path: ['menu', 'tea'], value: {} })).toBe('already exists');
    expect(why({ kind: 'remove', path: ['menu', 'cocoa'] })).toBe('is not in the file');
    expect(why({ kind: 'set', path: ['washing', 'machines', 3], value: {} })).toBe(
      'is beyond the end of its list',
    );
    expect(why({ kind: 'set', path: [], value: 1 })).toBe('cannot be replaced as a whole');
    expect(why({ kind: 'set', path: ['counter', 'making'], flow: '{ lognormal: ' })).toMatch(
      /^cannot be read/,
    );
    expect(why({ kind: 'set', path: ['counter', 'making'], flow: '*x' })).toMatch(
      /alias|cannot be read/,
    );
  });
});

describe('a value that an alias shares', () => {
  const shared = valid
    .replace(
      'making: 40 s }',
      'making: &quick { lognormal: { mean: &m 40 s, sd: 10 s } } } # the usual',
    )
    .replace('fallBacks: [takeaway]', 'fallBacks: [takeaway], making: *quick')
    .replace('making: 45 s', 'making: *m');
  const three = [
    ['menu', 'flat-white', 'making'],
    ['menu', 'tea', 'making'],
    ['counter', 'making'],
  ] as const;
  it('changes in one place alone, whichever that is', () => {
    for (const path of three) {
      const set = editScenario(shared, [{ kind: 'set', path, value: '33 s' }]);
      expect(told(set, path)).toBe('33 s');
      for (const other of three.filter((one) => one !== path))
        expect(told(set, other)).toEqual(told(shared, other));
      expect(commentsIn(set)).toEqual(['# the usual']);
    }
  });

  it('keeps its other places when a part of it changes, or it goes', () => {
    const part = editScenario(shared, [
      { kind: 'set', path: ['menu', 'flat-white', 'making', 'lognormal', 'mean'], value: '50 s' },
    ]);
    expect(told(part, three[0])).toEqual({ lognormal: { mean: '50 s', sd: '10 s' } });
    for (const other of [three[1], three[2]])
      expect(told(part, other)).toEqual(told(shared, other));
    const gone = editScenario(shared, [{ kind: 'remove', path: ['menu', 'flat-white', 'making'] }]);
    for (const other of [three[1], three[2]])
      expect(told(gone, other)).toEqual(told(shared, other));
  });
});

describe('any text', () => {
  const words = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 30 }),
    fc.string({
      unit: fc.constantFrom(
        ...':,#[]{}&*!|>\'"%@`?- \t\n\r\u0000\u0085\u2028\uFEFF',
        'a',
        '1',
        'é',
      ),
      maxLength: 12,
    }),
    fc.constantFrom(
      'true',
      'null',
      '~',
      '0x1f',
      '1e3',
      '12',
      '07:00',
      '.inf',
      '</script>',
      '- a',
      '---',
      '...',
      '<<',
      'a'.repeat(3000),
    ),
  );

  it('is held as it is given, in YAML and JSON, in whatever quotes were there', () => {
    const texts = [
      valid,
      valid.replace('name: Harbour Steps', 'name: "Harbour Steps"'),
      valid.replace('name: Harbour Steps', "name: 'Harbour Steps'"),
      valid.replace('name: Harbour Steps', 'name: |\n  Harbour\n  Steps'),
      valid.replaceAll('\n', '\r\n'),
      `\uFEFF${valid}`,
      JSON.stringify(parse(valid)),
    ];
    fc.assert(
      fc.property(fc.constantFrom(...texts), words, (text, word) => {
        const set = editScenario(text, [{ kind: 'set', path: ['name'], value: word }]);
        const tree = parse(set) as Record<string, unknown>;
        expect(tree['name']).toBe(word);
        expect({ ...tree, name: '' }).toEqual({ ...(parse(text) as object), name: '' });
      }),
      { ...seed, numRuns: 200 },
    );
  });

  it('reads back from one line', () => {
    const value = fc.letrec<{ node: unknown }>((tie) => ({
      node: fc.oneof(
        { maxDepth: 3 },
        words,
        fc.integer(),
        fc.double({ noNaN: true, noDefaultInfinity: true }).filter((x) => !Object.is(x, -0)),
        fc.boolean(),
        fc.constant(null),
        fc.array(tie('node'), { maxLength: 3 }),
        fc.dictionary(
          fc.string({ minLength: 1, maxLength: 5 }).filter((key) => key !== '__proto__'),
          tie('node'),
          { maxKeys: 3, noNullPrototype: true },
        ),
      ),
    })).node;
    fc.assert(
      fc.property(value, (one) => {
        const back = readFlow(flowText(one), []);
        expect(back).toEqual({ ok: true, value: one });
      }),
      { ...seed, numRuns: 300 },
    );
  });
});

describe('a checked change', () => {
  it('tells what the schema has against it, at the box it belongs to', () => {
    const check = (edit: Edit) => checkEdit(valid, 'a.yaml', [edit]);
    expect(check({ kind: 'set', path: ['counter', 'making'], value: '45' })).toMatchObject({
      ok: false,
      problems: [
        {
          path: 'counter.making',
          value: '45',
          rule: 'has no unit where a duration is needed',
          line: 18,
        },
      ],
    });
    expect(
      check({
        kind: 'set',
        path: ['guests', 'dwell'],
        flow: '{ lognormal: { mean: 0 min, sd: 4 min } }',
      }),
    ).toMatchObject({ ok: false, problems: [{ path: 'guests.dwell.lognormal.mean' }] });
    expect(check({ kind: 'set', path: ['guests', 'dwell'], flow: '{ lognormal: ' })).toMatchObject({
      ok: false,
      problems: [{ path: 'guests.dwell' }],
    });
    expect(check({ kind: 'remove', path: ['ware', 'cup'] })).toMatchObject({
      ok: false,
      problems: [{ path: 'menu.flat-white.setting[0]', rule: 'is not in ware' }],
    });
    const fine = check({
      kind: 'set',
      path: ['guests', 'dwell'],
      flow: '{ gamma: { mean: 30 min, sd: 4 min } }',
    });
    expect(fine.ok && told(fine.text, ['guests', 'dwell'])).toEqual({
      gamma: { mean: '30 min', sd: '4 min' },
    });
  });
});

describe('a mean typed where a law stands', () => {
  const file = valid.replace(/^clearing:.*$/m, 'clearing: { every: about 10 min, clearers: 1 }');
  const set = (value: string): string =>
    editScenario(file, [
      { kind: 'set', path: ['clearing', 'every'], value, asMean: true },
      {
        kind: 'set',
        path: ['guests', 'dwell'],
        flow: '{ gamma: { mean: 40 min, sd: 20 min } }',
      },
      { kind: 'set', path: ['guests', 'dwell'], value: '30 min', asMean: true },
    ]);

  it('keeps the kind of the law and the ratio of its spread to its mean', () => {
    expect(file).toContain('about 10 min');
    expect(set('12 min')).toContain('about 12 min');
    expect(set('12 min')).toMatch(/gamma: \{ mean: 30 min, sd: 15 min \}/);
  });
});
