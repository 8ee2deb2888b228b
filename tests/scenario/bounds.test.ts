import { describe, expect, it } from 'vitest';
import { accepted, changed, problemsOf, valid } from './a-scenario.js';

const ARRIVALS = '  slots: { every: 30 min, parties: [6, 9] }';
const CLEARING = 'clearing: atOnce';
const ROUNDS = 'clearing: { clearers: 1, tripPieces: 10, trip: 30 s';
const MACHINE = '    - { class: undercounter }';

describe('bounds of what a rush may be asked for', () => {
  it.each([
    [
      'staffHour: 20 EUR',
      'staffHour: 20 EUR\nlevel: 100 %',
      /level: .*nothing ever runs out.*below 100 %/,
    ],
    ['hours: { from: "07:00", to: "08:00" }', 'hours: { for: 1500 h }', /longer than 60 days/],
    [
      'partySize: { 1: 60 %, 2: 40 %, 3: 0 % }',
      'partySize: 2\n  drinksEach: 440',
      /drinksEach: is more than 20 drinks a guest/,
    ],
    [ARRIVALS, '  peak: { guests: 1000000 / h, shape: [1] }', /more than 100,000 guests an hour/],
    [ARRIVALS, `${ARRIVALS}\n  dayFactor: 50`, /dayFactor: is above 2: most days would be empty/],
    [
      'partySize: { 1: 60 %, 2: 40 %, 3: 0 % }',
      'partySize: 1000000000',
      /too many guests; .*at most 99/,
    ],
    [
      'partySize: { 1: 60 %, 2: 40 %, 3: 0 % }',
      'partySize: { value: 2, range: [1, 1000000000] }',
      /too many guests/,
    ],
    [
      'counter: { makers: 2, making: 45 s }',
      'counter: { makers: 2, making: 1000000000000 s }',
      /the longest allowed is ten years/,
    ],
    [
      'counter: { makers: 2, making: 45 s }',
      'counter: { makers: 2, making: 200 h }',
      /counter\.making: takes longer than a week/,
    ],
    [
      'drying: 3 min',
      'drying: { lognormal: { mean: 3 min, sd: 200 h } }',
      /ware\.mug\.drying: takes longer than a week/,
    ],
    [
      'counter: { makers: 2, making: 45 s }',
      'counter: { makers: 2000000000, making: 45 s }',
      /too many makers; .*at most 1,000,000/,
    ],
    [CLEARING, 'clearing: { every: 0.001 s }', /clearing\.every: is shorter than a second/],
    [
      MACHINE,
      '    - { class: undercounter, breakdown: { until: 0.001 s, repair: 1 s } }',
      /breakdown\.until: is shorter than a minute/,
    ],
    [
      MACHINE,
      `${MACHINE}\n  otherLoads: { racks: 1000000000 / h }`,
      /more than 10,000 racks an hour/,
    ],
    [MACHINE, '    - { class: undercounter, count: 1000000 }', /too many machines; .*at most 99/],
  ])('%s → %s', (from, to, says) => {
    const problems = problemsOf(changed(from, to));
    expect(problems.join('\n')).toMatch(says);
    for (const one of problems) expect(one).toMatch(/^\d+:\d+: .*; /);
  });

  it.each([
    [
      'hours: { from: "07:00", to: "08:00" }',
      'hours: { for: 60 h }',
      'long-rush',
      ARRIVALS,
      '  slots: { every: 30 h, parties: [6, 9] }',
    ],
    [MACHINE, '    - { class: undercounter, cycle: 20 h }', 'longer-than-rush'],
    [MACHINE, '    - { class: undercounter, warmUp: 20 h }', 'longer-than-rush'],
    ['drying: 3 min', 'drying: 20 h', 'longer-than-rush'],
    [CLEARING, `${ROUNDS}, every: about 20 h }`, 'rounds-after-closing'],
    [
      'cup: { price: 4 EUR',
      'cup: { price: 0 EUR',
      'ware-costs-nothing',
      /saucer: .*\n {2}mug: { price: 5 EUR/.exec(valid)![0],
      'saucer: { like: saucer, price: 0 EUR }\n  mug: { price: 0 EUR',
    ],
    ['drying: 3 min', 'drying: { lognormal: { mean: 3 min, sd: 30 min } }', 'wide-spread'],
  ])('%s → %s is warned about', (from, to, code, from2?: string, to2?: string) => {
    const first = changed(from, to);
    const text = from2 === undefined ? first : changed(from2, to2!, first);
    expect(accepted(text).warnings.map((one) => one.code)).toContain(code);
  });

  it('says once that parties are too large, and all of their sizes', () => {
    const { warnings } = accepted(changed('seats: { count: 20 }', 'seats: { count: 1 }'));
    expect(warnings.map(({ message }) => message)).toContain(
      'Parties of 2 are expected, but there is only 1 seat, so these parties always leave.',
    );
  });

  it('does not warn of late rounds where a full bench or a waiting party calls for one', () => {
    const { warnings } = accepted(
      changed(CLEARING, `${ROUNDS}, every: about 20 h, whenDirty: 12 }`),
    );
    expect(warnings.map(({ code }) => code)).not.toContain('rounds-after-closing');
  });

  it('leaves an ordinary café alone', () => {
    expect(
      accepted(changed(MACHINE, `${MACHINE}\n  otherLoads: { racks: 20 / h }`)).warnings.map(
        ({ code }) => code,
      ),
    ).not.toContain('longer-than-rush');
  });
});
