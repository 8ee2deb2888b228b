import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { saucerFitsOf, servedTogether } from '../../src/scenario/saucer-fits.js';
import { accepted, changed, valid } from './a-scenario.js';

const measured = changed(
  'saucer: { like: saucer }',
  'saucer: { like: saucer, well: 50 mm }',
  changed('cup: { price: 4 EUR,', 'cup: { price: 4 EUR, shape: cup, foot: 56 mm,', valid),
);
const misfits = (text: string) =>
  accepted(text).warnings.filter(({ code }) => code === 'saucer-misfit');

describe('cups on the saucers of the menu', () => {
  test('a foot too wide for its saucer is in the warnings of every answer', () => {
    expect(misfits(measured)).toMatchObject([
      {
        path: 'ware.cup.foot',
        message: expect.stringContaining('Cup does not fit Saucer: its foot is 6 mm too wide'),
      },
    ]);
    expect(misfits(measured.replace('56 mm', '40 mm'))[0]!.message).toContain(
      'Cup slides on Saucer: 10 mm of play',
    );
    expect(misfits(measured.replace('56 mm', '45 mm'))).toEqual([]);
  });

  test('none where somebody tried it, none of a pair that is not served, none on typical measures', () => {
    const tried = `${measured}supply:\n  saucers: { fits: { saucer: [cup] } }\n`;
    expect(misfits(tried)).toEqual([]);
    const read = accepted(tried);
    expect(saucerFitsOf(read.scenario, read.inputs)).toMatchObject([
      { cup: 'cup', fits: true, reason: 'given', byMeasures: 'foot too wide', typical: false },
    ]);
    expect(misfits(measured.replace('[cup, saucer]', '[cup]'))).toEqual([]);
    const typical = measured.replace(', well: 50 mm', '');
    expect(misfits(typical)).toEqual([]);
    const other = accepted(typical);
    expect(saucerFitsOf(other.scenario, other.inputs)[0]).toMatchObject({
      fits: false,
      typical: true,
    });
  });

  test('limits of the file decide', () => {
    const wide = `${measured.replace('56 mm', '40 mm')}supply:\n  saucers: { clearance: { least: 1 mm, most: 12 mm } }\n`;
    expect(misfits(wide)).toEqual([]);
  });

  test.each(readdirSync('scenarios').filter((name) => name.endsWith('.yaml')))(
    'every cup of %s has a saucer that it fits',
    (name) => {
      const { scenario, inputs } = accepted(readFileSync(join('scenarios', name), 'utf8'));
      const served = saucerFitsOf(scenario, inputs).filter((fit) =>
        servedTogether(scenario.menu, fit),
      );
      expect(served.length).toBeGreaterThan(0);
      expect(served.filter(({ fits }) => !fits)).toEqual([]);
    },
  );
});
