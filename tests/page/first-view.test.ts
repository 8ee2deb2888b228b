/** Numbers as people type them in the first view, files' names, and a change as an alternative. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alternativeOf } from '../../src/page/alternative.js';
import { differencesOf } from '../../src/page/differences.js';
import { stemOf } from '../../src/page/file-name.js';
import { scaledDurations, scaledNumbers } from '../../src/page/forms/scaled.js';
import {
  readLevel,
  readMachines,
  readPositive,
  UNITS,
} from '../../src/page/forms/typed-numbers.js';
import type { Settled } from '../../src/page/store.js';
import type { Edit } from '../../src/scenario/edit.js';
import { editScenario } from '../../src/scenario/edit-scenario.js';
import { formsOf, type FormGroup } from '../../src/scenario/input-forms.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { english } from '../../src/tell/words.js';

const demo = readFileSync('scenarios/1-commuter-bar.yaml', 'utf8');
function opened(text: string) {
  const read = readScenario(text, 'demo.yaml', { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read;
}
const groupsOf = (text: string): readonly FormGroup[] => formsOf(opened(text));

describe('a level', () => {
  it.each(['95', '95 %', '95%', '0.95', '0,95', ' 95.0 % '])('%s is 95 %%', (typed) => {
    expect(readLevel(typed)).toEqual({
      edits: [{ kind: 'set', path: ['level'], value: '95 %' }],
    });
  });
  it.each(['100', '100 %', '0', '0 %', '1.5.2', 'safe', '-5', '', '0.95 %'])(
    '%s is refused',
    (typed) => {
      expect(readLevel(typed)).toEqual({ wrong: english.page.levelWrong });
    },
  );
});

describe('machines', () => {
  it.each(['abc', '0', '99', '1.5', '', '-1'])('"%s" is refused with a sentence', (typed) => {
    expect(readMachines(typed, [{ class: 'hood' }])).toHaveProperty('wrong');
  });
  it('are copied from the last, or taken from the end, and the text then holds so many', () => {
    for (const wanted of [1, 2, 3, 12]) {
      const taken = readMachines(String(wanted), [{ class: 'undercounter' }]);
      if (!('edits' in taken)) throw new Error('refused');
      const { machines } = opened(editScenario(demo, taken.edits)).scenario.washing;
      expect(machines).toHaveLength(wanted);
    }
  });
});

describe('a number above 0', () => {
  it('is read as the place writes it', () => {
    const { guests, minutes } = UNITS;
    expect(readPositive('1,250', 'en-IE', guests)).toBe(1250);
    expect(readPositive('1.250,5', 'de-DE', guests)).toBe(1250.5);
    for (const typed of ['64 guests', '64/h', ' 64 guests an hour ', '64 per hour'])
      expect(readPositive(typed, 'en-IE', guests)).toBe(64);
    for (const typed of ['23.6 min', '23.6', '23.6m', '23.6 Minutes'])
      expect(readPositive(typed, 'en-IE', minutes)).toBe(23.6);
    for (const wrong of [
      '',
      'long',
      '0',
      '-4',
      '7am',
      '£14',
      '14 £',
      '2 h',
      '1 h 30 min',
      '64 guests',
    ])
      expect(readPositive(wrong, 'en-IE', minutes)).toBeNull();
    for (const wrong of ['7am', '64 / min', '64 %'])
      expect(readPositive(wrong, 'en-IE', guests)).toBeNull();
  });
});

describe('scaling', () => {
  it('by a factor and back gives the same numbers, to four digits', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        (mean, factor) => {
          const text = `{ lognormal: { mean: ${mean} min, sd: 9 min } }`;
          const back = scaledDurations(scaledDurations(text, factor), 1 / factor);
          const first = (one: string): number => Number(/mean: ([\d.]+) min/.exec(one)?.[1]);
          expect(Math.abs(first(back) / mean - 1)).toBeLessThan(2e-3);
        },
      ),
      { seed: 7 },
    );
  });
  it('leaves names and shares alone', () => {
    expect(scaledDurations('{ gamma: { mean: 10 min, cv: 0.3 } }', 2)).toBe(
      '{ gamma: { mean: 20 min, cv: 0.3 } }',
    );
    expect(scaledNumbers('3, 5, 7.5', 2)).toBe('6, 10, 15');
  });
});

describe('a file', () => {
  it('is named after the house and the day', () => {
    const day = new Date(2026, 10, 28);
    expect(stemOf('Tern & Tide', day)).toBe('tern-tide-2026-11-28');
    expect(stemOf('Café Ærø 2', day)).toBe('cafe-ærø-2-2026-11-28');
    expect(stemOf('../../!!', day)).toBe('letter-2026-11-28');
  });
});

describe('a change kept as an alternative', () => {
  const kept = (edits: readonly Edit[]): { text: string; edit: Edit | null } => {
    const text = editScenario(demo, edits);
    const before = { groups: groupsOf(demo) } as unknown as Settled;
    return { text, edit: alternativeOf('What was tried', before, groupsOf(text)) };
  };
  it.each<[string, readonly Edit[]]>([
    ['seats', [{ kind: 'set', path: ['seats', 'count'], value: 20 }]],
    [
      'a second machine',
      [{ kind: 'add', path: ['washing', 'machines', 1], value: { class: 'undercounter' } }],
    ],
    ['rounds', [{ kind: 'set', path: ['clearing', 'every'], value: '5 min' }]],
  ])('%s: the house stays as it was, with one alternative more', (_, edits) => {
    const { edit } = kept(edits);
    const after = editScenario(demo, [edit!]);
    const [was, is] = [opened(demo).scenario, opened(after).scenario];
    expect(Object.keys(is.alternatives ?? {}).length).toBe(
      Object.keys(was.alternatives ?? {}).length + 1,
    );
    expect({ ...is, alternatives: null }).toEqual({ ...was, alternatives: null });
    expect(differencesOf(groupsOf(demo), groupsOf(after))).toEqual([]);
  });
  it('nothing changed is none', () => expect(kept([]).edit).toBeNull());
});
