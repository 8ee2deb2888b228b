import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { countKey } from '../../src/racking/open-search.js';
import type { Rack } from '../../src/racking/rack.js';
import type { Vessel } from '../../src/racking/vessel.js';
import { countsOfClasses } from '../../src/scenario/class-counts.js';

const dist = fileURLToPath(new URL('../../dist', import.meta.url));
const cup: Vessel = { shape: 'cup', rimMm: 90, heightMm: 60, massG: 300 };
const rack: Rack = { id: 'open', kind: 'open' };

describe('counts of racks that the build works out', () => {
  it('are in the command that was built, as a search here finds them', () => {
    const built = readdirSync(dist)
      .filter((name) => name.startsWith('part-'))
      .map((name) => readFileSync(join(dist, name), 'utf8'))
      .join('');
    const searched = Object.entries(countsOfClasses(['large-cup', 'tumbler', 'teaspoon']));
    expect(searched).toHaveLength(2);
    for (const [key, pieces] of searched) expect(built).toContain(`'${key}': ${pieces},`);
  });

  it('are looked up by every measure that a layout hangs on', () => {
    const keys = [
      ...[
        { rimMm: 90.1 },
        { rimAcrossMm: 80 },
        { footprint: 'square' as const },
        { footMm: 95 },
        { handleMm: 20 },
        { handleWidthMm: 12 },
        { handleTip: 'round' as const },
      ].map((measure) => countKey({ ...cup, ...measure }, rack, 'best')),
      ...[{ usableMm: 470 }, { usableAcrossMm: 470 }, { clearanceMm: 4 }].map((measure) =>
        countKey(cup, { ...rack, ...measure }, 'best'),
      ),
      countKey(cup, rack, 'straight'),
      countKey(cup, rack, 'best'),
    ];
    expect(new Set(keys).size).toBe(keys.length);
    expect(countKey({ ...cup, massG: 1, heightMm: 1 }, rack, 'best')).toBe(keys.at(-1));
  });
});
