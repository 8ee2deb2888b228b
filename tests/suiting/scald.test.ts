import { expect, test } from 'vitest';
import published from '../../shared/checks/published.json' with { type: 'json' };
import { FACTS } from '../../src/suiting/facts.js';
import { scaldAt, scaldCaution, SCALDS } from '../../src/suiting/scald.js';

// Table after Moritz & Henriques, Am J Pathol 1947;23:695, as reproduced on a plumbing-safety page.
test('times until skin burns', () => {
  const table = published.find((entry) => entry.id === 'scald')!.expected as unknown as Record<
    string,
    [number, number]
  >;
  expect(
    Object.fromEntries(
      SCALDS.map((row) => [String(row.tempC), [row.secondDegreeS, row.thirdDegreeS]]),
    ),
  ).toEqual(table);
});

test('hotter burns sooner', () => {
  for (let i = 1; i < SCALDS.length; i++) {
    expect(SCALDS[i]!.tempC).toBeGreaterThan(SCALDS[i - 1]!.tempC);
    expect(SCALDS[i]!.secondDegreeS).toBeLessThan(SCALDS[i - 1]!.secondDegreeS);
  }
});

test('a caution never promises more time than the table, and defers to the law', () => {
  expect(scaldAt(57)!.tempC).toBe(55);
  expect(scaldCaution(57)).toBe(
    'at 57 °C skin burns in 17 s or less; local consumer and workplace law decides how hot a drink may be served',
  );
  expect(scaldCaution(75)).toContain('3 s or less');
  expect(scaldCaution(51)).toContain('2 min or less');
  expect(scaldCaution(40)).toBeNull();
});

// Lee & O'Mahony, J Food Sci 2002;67:2774: 59.8 ± 8.1 °C (as quoted by Ristenpart et al., Sci Rep 2022;12:20621).
test('the preferred range is one standard deviation about the mean', () => {
  expect(Math.abs(FACTS.preferredC.value - 59.8)).toBeLessThan(0.5);
  expect(Math.abs(FACTS.preferredC.range[0] - (59.8 - 8.1))).toBeLessThan(0.5);
  expect(Math.abs(FACTS.preferredC.range[1] - (59.8 + 8.1))).toBeLessThan(0.5);
});
