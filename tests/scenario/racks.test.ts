import { describe, expect, it } from 'vitest';
import { compile } from '../../src/scenario/compile.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { demoApart as demo } from './demo-apart.js';

const read = (racks: string, ware = (text: string): string => text) =>
  readScenario(`${ware(demo)}\nracks: ${racks}\n`, 'racks.yaml', {
    piecesPerRack: piecesPerRackOf,
  });

function perRack(racks: string, ware?: (text: string) => string): Record<string, string> {
  const result = read(racks, ware);
  if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join('\n'));
  const model = compile(result.scenario, piecesPerRackOf);
  return Object.fromEntries(
    model.ware.map((one) => [
      one.id,
      `${one.perRack} ${model.rackKinds[model.families[one.family]!.rackKind]!.id}`,
    ]),
  );
}

describe('racks of a scenario', () => {
  it('are the usual ones of each class, or those with fewest loads where asked', () => {
    expect(perRack('{}')).toMatchObject({ tumbler: '25 grid-25', saucer: '18 peg' });
    expect(perRack('{ plan: fewestLoads }')).toMatchObject({
      tumbler: '30 open',
      saucer: '18 peg',
    });
    expect(perRack('{ plan: fewestLoads, families: { glasses: grid-16 } }')).toMatchObject({
      tumbler: '16 grid-16',
    });
  });

  it('follow the measures at hand: opening, usable length, two saucers tried, extenders, mass, loading', () => {
    const wide = (text: string): string =>
      text.replace('like: tumbler, name: Tumbler,', 'like: tumbler, name: Tumbler, rim: 89 mm,');
    expect(perRack('{ measures: { grid-25: { opening: 90 mm } } }', wide)).toMatchObject({
      tumbler: '25 grid-25',
    });
    expect(read('{}', wide)).toMatchObject({ ok: false });
    expect(perRack('{ measures: { peg: { tried: 23 mm, slots: 20 } } }')['saucer']).toBe('36 peg');
    expect(perRack('{ measures: { open: { maxMass: 7 kg } } }')['medium-cup']).toBe('18 open');
    expect(perRack('{ loading: at45 }')['medium-cup']).toBe('18 open');
    expect(
      perRack(
        '{ measures: { grid-25: { innerHeight: 80 mm, extenders: 1, extenderHeight: 40 mm } } }',
      )['tumbler'],
    ).toBe('25 grid-25');
    expect(read('{ measures: { grid-25: { innerHeight: 80 mm } } }')).toMatchObject({ ok: false });
  });

  it('may be of any kind where the ware says how many fill one', () => {
    const counted = (text: string): string =>
      text.replace('like: tumbler, name: Tumbler,', 'like: tumbler, name: Tumbler, perRack: 20,');
    const own = '{ families: { glasses: glass-tray }, owned: { glass-tray: 3 } }';
    expect(perRack(own, counted)['tumbler']).toBe('20 glass-tray');
    const result = read(own, counted);
    expect(result.ok && compile(result.scenario, piecesPerRackOf).rackKinds).toContainEqual({
      id: 'glass-tray',
      owned: 3,
    });
    expect(result.ok && result.warnings.map(({ code }) => code)).not.toContain('own-rack');
    const slip = read('{ families: { glasses: grid-26 } }', counted);
    expect(slip.ok && slip.warnings.map(({ code }) => code)).toContain('own-rack');
  });

  it('of their own kind are refused, each once, where nothing tells what they hold', () => {
    const problems = (racks: string): string[] => {
      const result = read(racks);
      return result.ok ? [] : result.problems.map(({ path, message }) => `${path}: ${message}`);
    };
    expect(problems('{ families: { glasses: glass-tray } }')).toEqual([
      'racks.families.glasses: "glass-tray" is not a listed kind of rack, so its ware must say how many fill one, and tumbler does not; count the pieces in a full rack and write perRack: 16 under ware.tumbler, or choose one of open, grid-9, grid-16, grid-25, grid-36, grid-49, peg, cutlery',
    ]);
    expect(problems('{ owned: { glass-tray: 3 } }')).toEqual([
      expect.stringContaining('racks.owned.glass-tray: "glass-tray" is neither a listed kind'),
    ]);
    expect(problems('{ measures: { grid-26: { opening: 90 mm } } }')).toEqual([
      expect.stringContaining('"grid-26" is not a listed kind of rack, so measures do not tell'),
    ]);
  });

  it('take square and oval ware by its own footprint', () => {
    const square = (text: string): string =>
      text.replace(
        'like: medium-cup, name: Medium cup,',
        'like: medium-cup, name: Medium cup, footprint: square, handle: 0 mm, handleWidth: 14 mm,',
      );
    const round = (text: string): string =>
      text.replace(
        'like: medium-cup, name: Medium cup,',
        'like: medium-cup, name: Medium cup, handle: 0 mm,',
      );
    expect(Number.parseInt(perRack('{}', square)['medium-cup']!)).toBeLessThanOrEqual(
      Number.parseInt(perRack('{}', round)['medium-cup']!),
    );
    // Six staggered rows of three diamonds: more than the sixteen of a plain grid.
    expect(perRack('{}', square)['medium-cup']).toBe('18 open');
  });

  it('name unknown kinds with a suggestion', () => {
    const result = read('{ measures: { grid-24: { opening: 90 mm } } }');
    expect(result.ok).toBe(false);
    if (!result.ok) expect(result.problems[0]!.message).toMatch(/did you mean "grid-25"/);
  });
});
