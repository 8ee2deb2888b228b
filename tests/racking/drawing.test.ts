import { describe, expect, test } from 'vitest';
import { rackLayout } from '../../src/racking/layout.js';
import type { Rack } from '../../src/racking/rack.js';
import type { Vessel } from '../../src/racking/vessel.js';
import { drawRack } from '../../src/tell/drawings/rack-drawing.js';
import { cup, disc, open, saucer, spoon } from './some.js';

const drawn = (vessel: Vessel, rack: Rack, title = 'A rack') =>
  drawRack(rackLayout(vessel, rack), vessel, rack, { title, id: 'one' });
const grid: Rack = { id: 'grid-16', kind: 'grid', cells: 4, openingMm: 111 };
const peg: Rack = { id: 'peg', kind: 'peg', slots: 12, pitchMm: 30 };
const basket: Rack = { id: 'cutlery', kind: 'basket' };

describe('a drawing of a rack', () => {
  test.each([
    ['open, with handles', cup(89.5, 28.5, 14, 'round'), open],
    ['open, plain', disc(77), open],
    ['open, square', { ...cup(80, 25, 12), footprint: 'square' as const }, open],
    ['open, oval', { ...cup(120, 0, 12), footprint: 'oval' as const, rimAcrossMm: 80 }, open],
    ['compartments', cup(89.5, 28.5, 14, 'round'), grid],
    ['pegs', saucer, peg],
    ['cutlery', spoon, basket],
  ] as const)('has one tinted shape a piece, and says the count: %s', (_, vessel, rack) => {
    const svg = drawn(vessel, rack);
    const { pieces } = rackLayout(vessel, rack);
    expect(svg.match(/fill="#[0-9a-f]{6}"/g)).toHaveLength(pieces);
    expect(svg).toContain(`>${pieces} pieces</text>`);
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  test('is to scale: a millimetre is a unit, places and turns are those of the layout', () => {
    const vessel = cup(89.5, 28.5, 14, 'round');
    const layout = rackLayout(vessel, open);
    const places = [
      ...drawn(vessel, open).matchAll(
        /<g transform="translate\(([\d.]+) ([\d.]+)\) rotate\(([\d.]+)\)">/g,
      ),
    ].map((m) => m.slice(1).map(Number));
    expect(places).toHaveLength(layout.pieces);
    places.forEach(([x, y, angle], i) => {
      const at = layout.positions[i]!;
      expect(
        [x! - at.x, y! - at.y, angle! - at.angleDeg].every((error) => Math.abs(error) <= 0.0005),
      ).toBe(true);
    });
  });

  test('is well-formed, and escapes what it is given', () => {
    const svg = drawn(
      cup(80, 25, 12),
      { ...open, id: '<b>' },
      `<script>alert("1")</script> & 'co'`,
    );
    expect(svg).not.toContain('<script');
    expect(svg).not.toMatch(/&(?!#\d+;)/);
    const open_ = [...svg.matchAll(/<(svg|g|title|desc|text)[ >]/g)].length;
    expect([...svg.matchAll(/<\/(svg|g|title|desc|text)>/g)]).toHaveLength(open_);
  });

  test('is told to a reader who does not see it', () => {
    const svg = drawn(cup(89.5, 28.5, 14, 'round'), open);
    expect(svg).toMatch(/role="img" aria-labelledby="one-title one-desc"/);
    expect(svg).toMatch(
      /<desc id="one-desc">Seen from above, to scale\. 21 pieces\. Every second row turned round, handles straight\. The rim could be 1\.8\u00A0mm wider/,
    );
  });

  test('says why nothing goes in', () => {
    expect(drawn(disc(120), grid)).toMatch(/>0 pieces<[\s\S]*take no more than 111/);
  });
});
