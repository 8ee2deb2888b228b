/** Changes that are tried on a scenario, those of each box by themselves. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { afterChanges } from '../../src/page/engine/opened.js';
import type { Asked } from '../../src/page/messages.js';
import type { Edit } from '../../src/scenario/edit.js';

const asked: Asked = {
  fileName: 'demo.yaml',
  text: readFileSync('scenarios/1-commuter-bar.yaml', 'utf8'),
  options: {},
  look: { units: 'metric', locale: null },
};
const set = (path: string, value: unknown): Edit => ({ kind: 'set', path: path.split('.'), value });

describe('changes of several boxes at once', () => {
  it('are all made where they hold together, though none would by itself', () => {
    // A drink is served in what is added after it.
    const edits = [
      [set('menu.filter.setting', ['own-beaker'])],
      [{ kind: 'add', path: ['ware', 'own-beaker'], value: { like: 'tumbler', name: 'Beaker' } }],
    ] as const;
    expect(afterChanges(asked, edits.slice(0, 1))).toMatchObject({ read: null, text: asked.text });
    const { read, text, mistakes } = afterChanges(asked, edits);
    expect(mistakes).toEqual([]);
    expect(read).not.toBeNull();
    expect(text).toContain('name: Beaker');
  });

  it('are made one by one where one of them will not do, which alone is refused', () => {
    const { read, text, mistakes } = afterChanges(asked, [
      [set('seats.count', 18)],
      [set('clearing.every', 'soon')],
      [set('counter.makers', 3)],
    ]);
    expect(read?.scenario.counter.makers).toBe(3);
    expect(text).toContain('  count: 18');
    expect(mistakes.map(({ path }) => path)).toEqual(['clearing.every']);
    const none = afterChanges(asked, [
      [set('seats.count', 'few')],
      [set('clearing.every', 'soon')],
    ]);
    expect(none).toMatchObject({ read: null, text: asked.text });
    expect(none.mistakes).toHaveLength(2);
  });
});
