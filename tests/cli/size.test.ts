import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { settingsTyped } from '../../src/questions/settings.js';
import type { Answer } from '../../src/questions/size/answer.js';
import { size } from '../../src/questions/size/head.js';
import tiny from '../../shared/checks/tiny-days.json' with { type: 'json' };
import { scenarioOfNeutral, type NeutralConfig } from '../published/scenario-of-neutral.js';
import { command, cuptide, cuptideAlone, emptyFolder, root } from './run.js';

const demo = 'scenarios/1-commuter-bar.yaml';
const answerOf = (args: readonly string[]): Answer => {
  const { status, out, err } = cuptide(args);
  expect(status, err).toBe(0);
  return JSON.parse(out) as Answer;
};

describe('hand-worked days, through scenario files and --day (shared/checks/tiny-days.json)', () => {
  const folder = emptyFolder();

  it.each(tiny.days.map((day) => [day.name, day] as const))(
    '%s',
    (name, { config, day, expected, stock, expectedWithStock }) => {
      const file = join(folder, `${name}.json`);
      const dayFile = join(folder, `${name}.day.json`);
      writeFileSync(
        file,
        JSON.stringify(scenarioOfNeutral(name, config as unknown as NeutralConfig)),
      );
      writeFileSync(dayFile, JSON.stringify({ days: [day] }));
      const ids = config.wares.map(({ id }) => id);
      const free = answerOf(['size', file, '--day', dayFile, '--json', '--peaks']);
      expect(free.days).toEqual({ chosenOn: 1, certifiedOn: 0 });
      expect(free.certified).toBeNull();
      expect(free.peaks).toEqual([ids.map((id) => (expected.peaks as Record<string, number>)[id])]);
      const given = answerOf([
        'size',
        file,
        '--day',
        dayFile,
        '--json',
        '--peaks',
        '--stock',
        Object.entries(stock)
          .map(([id, n]) => `${id}=${n}`)
          .join(','),
      ]);
      expect(given.peaks).toEqual([
        ids.map((id) => (expectedWithStock.peaks as Record<string, number>)[id]),
      ]);
      const { short, firstShortMinute, turnedAway, unserved } = expectedWithStock;
      expect(given.perDay).toEqual([{ short, firstShortMinute, turnedAway, unserved }]);
      expect(given.rushLevel!.level).toBe(firstShortMinute === null ? 1 : 0);
    },
  );
});

describe('the machine-readable answer', () => {
  const few = ['--json', '--days', '300'];
  const ids = ['medium-cup', 'large-cup', 'saucer', 'tumbler', 'teaspoon'];
  const stock = (pieces: readonly number[]): string[] => [
    '--stock',
    ids.map((id, ware) => `${id}=${pieces[ware]}`).join(','),
  ];
  // Asked once: several tests look at it.
  const sized = answerOf(['size', demo, ...few, '--peaks']);
  const plenty = answerOf(['size', demo, ...few, '--peaks', ...stock([200, 200, 200, 200, 200])]);

  it('is one JSON object in the promised form', () => {
    expect(sized).toMatchObject({
      scenario: 'Tern & Tide',
      seed: '1',
      currency: 'EUR',
      level: 0.95,
      days: { chosenOn: 300, certifiedOn: 1000 },
      certified: { confidence: 0.95 },
    });
    for (const line of sized.stock) {
      expect(Number.isInteger(line.pieces)).toBe(true);
      expect(line.pieces).toBeGreaterThanOrEqual(1);
      expect(line.unitCost).toBeGreaterThan(0);
    }
    expect(Object.keys(sized.busy)).toEqual(
      expect.arrayContaining(['machines', 'makers', 'seats']),
    );
  });

  it.each([
    ['days are added until the cost is steady, and helpers run ahead', '3', ['--peaks']],
    ['pieces are given', '2', ['--stock', 'saucer=40,tumbler=8', '--days', '1500']],
  ])('gives the same bytes with one thread and with several where %s', (_, threads, extra) => {
    const args = ['size', demo, '--json', ...extra, '--threads'];
    const one = cuptideAlone([...args, '1']).out;
    expect(cuptideAlone([...args, threads]).out).toBe(one);
    expect('peaks' in (JSON.parse(one) as Answer)).toBe(extra.includes('--peaks'));
  });

  it('changes with the seed', () => {
    const other = answerOf(['size', demo, '--json', '--days', '50', '--peaks', '--seed', 'b']);
    expect(other.peaks).toHaveLength(50);
    expect(other.peaks).not.toEqual(sized.peaks!.slice(0, 50));
  });

  it('judges a given stock, and takes ware left out as plentiful', () => {
    const low = answerOf(['size', demo, ...few, '--stock', 'medium-cup=20']);
    expect(low).not.toHaveProperty('peaks');
    expect(low.rushLevel!.level).toBeLessThan(plenty.rushLevel!.level);
    expect(plenty).toMatchObject({
      rushLevel: { level: 1 },
      fillRate: 1,
      firstShortMinute: { median: null, earliest: null },
    });
    expect(low.fillRate!).toBeLessThan(1);
    expect(low.warnings.map(({ code }) => code)).toContain('ware-taken-as-plentiful');
  });

  it('parts the guests so that nobody is counted twice', () => {
    const { guests } = answerOf(['size', 'scenarios/2-brunch-room.yaml', '--json', '--days', '50']);
    const sum = Object.values(guests.parts).reduce((all, one) => all + one, 0);
    expect(sum).toBeCloseTo(guests.arrived, 9);
    expect(guests.served + guests.turnedAway - guests.parts.tookAwayForWantOfSeat).toBeCloseTo(
      guests.arrived,
      9,
    );
    expect(guests.turnedAway).toBeGreaterThan(0);
  });

  it('gives the interval of what an item needs alone under both names', () => {
    for (const { alone, low, high, aloneLow, aloneHigh } of sized.stock) {
      expect([aloneLow, aloneHigh]).toEqual([low, high]);
      if (aloneLow !== null) expect(aloneLow).toBeLessThanOrEqual(alone);
      if (aloneHigh !== null) expect(aloneHigh).toBeGreaterThanOrEqual(alone);
    }
  });

  it('takes a level in each way that people write one', () => {
    for (const level of ['0.9', '90', '90%', '90 %'])
      expect(settingsTyped(size.settings, { level }), level).toEqual({ level: 0.9 });
    expect(answerOf(['size', demo, '--json', '--days', '20', '--level', '90 %']).level).toBe(0.9);
  });

  it('is safe exactly on the days whose peaks the stock covers', () => {
    const pieces = [28, 15, 40, 6, 38];
    const safe = plenty.peaks!.filter((day) => day.every((peak, ware) => peak <= pieces[ware]!));
    const judged = answerOf(['size', demo, ...few, ...stock(pieces)]);
    expect(judged.rushLevel!.level).toBeCloseTo(safe.length / 300, 12);
    expect(safe.length).toBeGreaterThan(0);
    expect(safe.length).toBeLessThan(300);
    // A given stock is judged on days that none is chosen on.
    expect(plenty.peaks).not.toEqual(sized.peaks);
  });
});

describe('the terminal', () => {
  it('tells people in one sentence and tables, and ends quietly when nobody reads on', () => {
    const { out } = cuptide(['size', demo, '--days', '200']);
    expect(out).toMatch(/^Have \d+ medium cups/);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
    const piped = spawnSync(
      'sh',
      ['-c', `"${process.execPath}" "${command}" size ${demo} --days 200 | head -n 1`],
      { cwd: root, encoding: 'utf8' },
    );
    expect(piped.stdout).toBe(`${out.split('\n')[0]}\n`);
    expect(piped.stderr).toBe('');
  });

  it('prints a JSON Schema that says what is in the demo', () => {
    const schema = JSON.parse(cuptide(['check', '--schema']).out) as {
      properties: Record<string, unknown>;
      required: string[];
    };
    const demoKeys = readFileSync(join(root, demo), 'utf8').match(/^[a-zA-Z]+(?=:)/gm)!;
    for (const key of demoKeys) expect(schema.properties).toHaveProperty(key);
    expect(schema.required).toContain('menu');
  });
});
