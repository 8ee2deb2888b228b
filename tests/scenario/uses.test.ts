/** A ware or a drink goes, and the scenario is one still: every example, every ware and drink of it. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkEdit } from '../../src/scenario/edit-scenario.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { formsOf } from '../../src/scenario/input-forms.js';
import { stepsWithout } from '../../src/scenario/uses.js';

const options = { piecesPerRack: piecesPerRackOf };
const folder = new URL('../../scenarios/', import.meta.url);
const houses = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => {
    const text = readFileSync(new URL(name, folder), 'utf8');
    const read = readScenario(text, name, options);
    if (!read.ok) throw new Error(name);
    return { name, text, read };
  });

describe.each(houses)('$name', ({ name, text, read }) => {
  const { ware, menu } = read.scenario;

  it('is a scenario without any one ware, another in its place, and names it no more', () => {
    for (const id of Object.keys(ware)) {
      const instead = Object.keys(ware).find((one) => one !== id)!;
      const checked = checkEdit(
        text,
        name,
        [{ kind: 'retire', path: ['ware', id], instead }],
        options,
      );
      expect(checked, id).toMatchObject({ ok: true });
      if (!checked.ok) continue;
      const after = readScenario(checked.text, name, options);
      if (!after.ok) throw new Error(id);
      expect(Object.keys(after.scenario.ware)).toEqual(
        Object.keys(ware).filter((one) => one !== id),
      );
      expect(JSON.stringify(after.raw).replaceAll(`"like":"${id}"`, '')).not.toMatch(
        new RegExp(`"${id}"`),
      );
    }
  });

  it('is a scenario without any one drink, the shares of the others as they were to each other', () => {
    const ids = Object.keys(menu);
    if (ids.length < 3) return;
    for (const id of ids) {
      const checked = checkEdit(
        text,
        name,
        [{ kind: 'retire', path: ['menu', id], instead: null }],
        options,
      );
      expect(checked, id).toMatchObject({ ok: true });
      if (!checked.ok) continue;
      const after = readScenario(checked.text, name, options);
      if (!after.ok) throw new Error(id);
      const [one, other] = ids.filter((drink) => drink !== id);
      const share = (of: typeof menu, drink: string): number => Number(of[drink]!.share);
      expect(share(after.scenario.menu, one!) / share(after.scenario.menu, other!)).toBeCloseTo(
        share(menu, one!) / share(menu, other!),
        2,
      );
    }
  });

  it('says before what would change', () => {
    for (const { at, usedBy } of formsOf(read).flatMap(({ parts }) => parts))
      if (at[0] === 'ware')
        for (const [drink, { setting }] of Object.entries(menu))
          if (Array.isArray(setting) && setting.includes(String(at[1])))
            expect(usedBy).toContainEqual(['menu', drink, 'setting']);
  });
});

describe('steps', () => {
  it('worked by hand: settings, fall-backs, quotes, counts, an alternative that was about it alone', () => {
    const tree = {
      ware: { cup: {}, mug: {}, saucer: {} },
      menu: {
        latte: { share: '60 %', setting: ['cup', 'saucer'], fallBacks: [['mug', 'saucer']] },
        tea: { share: '40 %', setting: ['mug'], fallBacks: [['cup']] },
      },
      supply: { onHand: { mug: 3 }, suppliers: { quay: { quotes: { mug: {}, cup: {} } } } },
      alternatives: {
        wide: { change: { 'ware.mug.rim': '90 mm' } },
        other: { change: { level: 0.9 } },
      },
      collections: {
        dune: { file: 'dune.csv', standsFor: { mug: 'dune-300', cup: 'dune-200' } },
        slate: { file: 'slate.csv', standsFor: { mug: 'slate-mug' } },
      },
      calendar: {
        kinds: {
          sunday: {
            daysAYear: 52,
            change: { 'menu.latte.share': '90 %' },
            scale: { 'menu.tea.share': '50 %', arrivals: '120 %' },
          },
          fair: { daysAYear: 4, change: { 'ware.mug.rim': '90 mm' } },
        },
      },
    };
    expect(stepsWithout(tree, ['ware', 'mug'], 'cup')).toEqual([
      { kind: 'set', path: ['menu', 'latte', 'fallBacks'], value: [['cup', 'saucer']] },
      { kind: 'set', path: ['menu', 'tea', 'setting'], value: ['cup'] },
      { kind: 'remove', path: ['supply', 'suppliers', 'quay', 'quotes', 'mug'] },
      { kind: 'remove', path: ['collections', 'dune', 'standsFor', 'mug'] },
      { kind: 'remove', path: ['collections', 'slate'] },
      { kind: 'remove', path: ['supply', 'onHand', 'mug'] },
      { kind: 'remove', path: ['alternatives', 'wide'] },
      { kind: 'remove', path: ['calendar', 'kinds', 'fair', 'change'] },
      { kind: 'remove', path: ['ware', 'mug'] },
    ]);
    expect(stepsWithout(tree, ['menu', 'tea'])).toEqual([
      { kind: 'set', path: ['menu', 'latte', 'share'], value: '100 %' },
      { kind: 'remove', path: ['calendar', 'kinds', 'sunday', 'scale', 'menu.tea.share'] },
      { kind: 'remove', path: ['menu', 'tea'] },
    ]);
    expect(stepsWithout(tree, ['supply', 'suppliers', 'quay'])).toEqual([
      { kind: 'remove', path: ['supply', 'suppliers', 'quay'] },
    ]);
  });
});
