import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { RacksAnswer } from '../../src/questions/racks/answer.js';
import { cuptide, emptyFolder } from './run.js';

const demo = 'scenarios/1-commuter-bar.yaml';

describe('cuptide racks', () => {
  const folder = emptyFolder();
  const told = cuptide(['racks', demo, '--out', folder]);
  const answer = JSON.parse(cuptide(['racks', demo, '--json']).out) as RacksAnswer;

  it('tells pieces, loads, what holds the next piece out, slack, steps, lifting and cautions', () => {
    expect(told.status, told.err).toBe(0);
    for (const say of [
      /Medium cup +open rack +21/,
      /NIOSH/,
      /[1-9]\d*\.\d lifts\s+an\s+hour/,
      /Warnings/,
      /FDA\s+Food\s+Code/,
      /10 mm wider/,
      /local rules/,
    ])
      expect(told.out).toMatch(say);
    for (const line of answer.lines.filter(({ pieces }) => pieces > 0)) {
      expect(line.loadsPer100).toBe(Math.ceil(100 / line.pieces));
      expect(line.areaShare).toBeGreaterThan(0);
      expect(line.areaShare).toBeLessThanOrEqual(1);
    }
  });

  it('plans the rack with fewest loads for each ware of known shape', () => {
    for (const ware of new Set(answer.lines.map((line) => line.ware)))
      expect(answer.lines.filter((line) => line.ware === ware && line.planned)).toHaveLength(1);
  });

  it('draws every ware in its rack, to scale, and the two shapes', () => {
    const files = readdirSync(folder);
    expect(files.filter((name) => name.includes('.rack-')).length).toBe(
      answer.lines.filter(({ used, pieces }) => used && pieces > 0).length,
    );
    expect(files.some((name) => name.endsWith('two-shapes.svg'))).toBe(true);
    const cup = readFileSync(join(folder, '1-commuter-bar.rack-medium-cup.svg'), 'utf8');
    expect(cup.match(/rotate\(/g)).toHaveLength(
      answer.lines.find(({ ware, used }) => ware === 'medium-cup' && used)!.pieces,
    );
    expect(cup).toMatch(/<title[^>]*>Medium cup: 21 in one open rack<\/title>/);
    expect(cup).toMatch(/<desc/);
  });

  it('shows details on request alone', () => {
    expect(told.out).not.toMatch(/Racks waiting|grid|rack of 9/);
    expect(told.out).toMatch(/With --all: .*every 15/s);
    const all = cuptide(['racks', demo, '--all']).out;
    for (const say of [
      /Racks\s+waiting/,
      /rack of 9/,
      /Minutes a piece\s+spends\s+at\s+each\s+place/,
    ])
      expect(all).toMatch(say);
  });

  it('takes the lift that was typed, in any unit of length', () => {
    const typed = ['--lift-from', '35.4331 in', '--lift-to', '0.45 m', '--reach', '500 mm'];
    const one = JSON.parse(
      cuptide(['racks', demo, '--ware', 'tumbler', ...typed, '--json']).out,
    ) as RacksAnswer;
    expect(one.lift.fromCm).toBeCloseTo(90, 3);
    expect([one.lift.toCm, one.lift.reachCm]).toEqual([45, 50]);
    const index = ({ lines }: RacksAnswer): number =>
      lines.find(({ ware, used }) => ware === 'tumbler' && used)!.liftingIndex!;
    // The horizontal multiplier is 25 cm over the reach.
    expect(index(one) / index(answer)).toBeCloseTo(50 / 40, 4);
  });

  it('one ware alone, as text and as JSON', () => {
    const text = cuptide(['racks', demo, '--ware', 'tumbler']);
    const tumbler = answer.lines.find(({ ware, used }) => ware === 'tumbler' && used)!;
    expect(text.out).toContain(`One full rack holds: Tumbler ${tumbler.pieces}.`);
    expect(text.out).not.toMatch(/Medium cup|Washing in the rush/);
    const one = JSON.parse(
      cuptide(['racks', demo, '--ware', 'tumbler', '--json']).out,
    ) as RacksAnswer;
    expect(one.lines).toEqual(answer.lines.filter(({ ware }) => ware === 'tumbler'));
  });

  it('wider cups never make fewer racks', () => {
    const [now, wide] = answer.twoShapes!.shapes;
    expect(wide!.fullRacksADay).toBeGreaterThan(now!.fullRacksADay);
    for (const [ware, pieces] of Object.entries(wide!.perRack))
      expect(pieces).toBeLessThanOrEqual(now!.perRack[ware]!);
  });

  it('minutes at each place add up to the loop', () => {
    for (const { minutes } of answer.washing.minutes)
      expect(minutes.reduce((sum, one) => sum + one, 0)).toBeGreaterThan(5);
  });

  it('refuses a ware that fits no rack, an unknown ware and a length without a unit', () => {
    const file = join(folder, 'wide.yaml');
    writeFileSync(
      file,
      readFileSync(demo, 'utf8').replace(
        'like: large-cup, name: Large cup,',
        'like: large-cup, name: Large cup, rim: 480 mm,',
      ),
    );
    const wide = cuptide(['racks', file]);
    expect([wide.status, wide.out]).toEqual([2, '']);
    expect(wide.err).toMatch(/ware\.large-cup\.rim: "480 mm" does not fit a rack/);
    // A handle longer than the rim, and a glass higher than the rack with all its extenders.
    writeFileSync(
      file,
      readFileSync(demo, 'utf8')
        .replace(
          'like: large-cup, name: Large cup,',
          'like: large-cup, name: Large cup, handle: 130 mm,',
        )
        .replace('like: tumbler, name: Tumbler,', 'like: tumbler, name: Tumbler, height: 320 mm,'),
    );
    expect(cuptide(['racks', file])).toMatchObject({
      status: 2,
      out: '',
      err: expect.stringMatching(
        /large-cup\.handle: "130 mm".*no more than the rim[^]*tumbler\.height: "320 mm".*no more than 300 mm/,
      ) as string,
    });
    expect(cuptide(['racks', demo, '--ware', 'bucket'])).toMatchObject({ status: 2, out: '' });
    const lengths = cuptide(['racks', demo, '--reach', '40', '--lift-to', 'low']);
    expect(lengths).toMatchObject({ status: 2, out: '' });
    expect(lengths.err).toMatch(
      /--reach: "40"[^]*--lift-to: "low"|--lift-to: "low"[^]*--reach: "40"/,
    );
  });

  it('escapes hostile names in drawings', () => {
    const file = join(folder, 'hostile.yaml');
    writeFileSync(
      file,
      readFileSync(demo, 'utf8').replace(
        'name: Medium cup',
        `name: "</title><script>alert(1)</script>"`,
      ),
    );
    const out = join(folder, 'hostile');
    expect(cuptide(['racks', file, '--ware', 'medium-cup', '--out', out]).status).toBe(0);
    expect(readFileSync(join(out, 'hostile.rack-medium-cup.svg'), 'utf8')).not.toContain(
      '<script>',
    );
  });
});
