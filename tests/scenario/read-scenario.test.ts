import { describe, expect, it } from 'vitest';
import { largestScenarioBytes } from '../../src/scenario/parse-yaml.js';
import { checkTree, readScenario } from '../../src/scenario/read-scenario.js';
import { withValueAt } from '../../src/scenario/tree.js';
import { accepted, changed, problemsOf, valid } from './a-scenario.js';

describe('a scenario that is right', () => {
  it('is accepted as YAML, as bytes, as JSON and with Windows line ends', () => {
    const { scenario } = accepted(valid);
    expect(accepted(new TextEncoder().encode(valid)).scenario).toEqual(scenario);
    expect(accepted(`\uFEFF${valid}`).scenario).toEqual(scenario);
    expect(accepted(valid.replaceAll('\n', '\r\n')).scenario).toEqual(scenario);
    expect(accepted(JSON.stringify(accepted(valid).raw, null, '\t')).scenario).toEqual(scenario);
  });

  it('follows aliases', () => {
    const text = changed(
      'tea: { share: 25 %, setting: [mug]',
      'tea: { share: 25 %, setting: *cup',
      changed('setting: [cup, saucer]', 'setting: &cup [cup, saucer]'),
    );
    expect(accepted(text).scenario.menu['tea']?.setting).toEqual(['cup', 'saucer']);
  });
});

describe('a single mistake: place, path, value, rule and remedy', () => {
  it.each([
    [
      'unknown key',
      'seats: { count: 20 }',
      'seats: { count: 20, ▸whenFul: wait }',
      'seats.whenFul: "whenFul" is not a field here; did you mean "whenFull"?',
    ],
    [
      'unknown key at the top',
      'clearing: atOnce',
      '▸claering: atOnce',
      'claering: "claering" is not a field here; did you mean "clearing"?',
    ],
    [
      'missing unit',
      'making: 40 s',
      'making: ▸40',
      'menu.flat-white.making: 40 is a number without a unit where a duration is needed; write "40 s" or "40 min"',
    ],
    [
      'wrong unit',
      'making: 40 s',
      'making: ▸40 mm',
      'menu.flat-white.making: "40 mm" has the unit "mm" of a length where a duration is needed (ms, s, min, h, days); write "40 s" or "40 min"',
    ],
    [
      'negative',
      'drying: 3 min',
      'drying: ▸-3 min',
      'ware.mug.drying: "-3 min" is negative: a duration cannot be negative; write 3 min or leave it out',
    ],
    [
      'shares of the menu',
      'share: 25 %',
      'share: 20 %',
      '10:1: menu: has shares that add up to 95 %, not 100 %; add 5 % among the drinks',
    ],
    [
      'shares a hair too large',
      'share: 25 %',
      'share: 25.000008 %',
      '10:1: menu: has shares that add up to more than 100 %, not 100 %; take away 0.000008 % among the drinks',
    ],
    [
      'shares of party sizes',
      '3: 0 %',
      '3: 10 %',
      '8:3: guests.partySize: has shares that add up to 110 %, not 100 %; take away 10 % among the party sizes',
    ],
    [
      'unknown ware in a setting',
      'setting: [cup, saucer]',
      'setting: [cup, ▸sacer]',
      'menu.flat-white.setting[1]: "sacer" is not in ware; did you mean "saucer"?',
    ],
    [
      'unknown ware in a fall-back',
      'fallBacks: [takeaway]',
      'fallBacks: [[▸glass], takeaway]',
      'menu.tea.fallBacks[0][0]: "glass" is not in ware; choose one of cup, saucer, mug',
    ],
    [
      'takeaway among pieces',
      'setting: [mug]',
      'setting: [mug, ▸takeaway]',
      'menu.tea.setting[1]: "takeaway" is listed among pieces of ware; write takeaway alone, without brackets',
    ],
    [
      'closing before opening',
      'from: "07:00"',
      'from: "17:00"',
      '4:29: hours.to: "08:00" is a closing time before the opening time; write a time after 17:00; a rush lies within one day: for one past midnight, write all times some hours earlier',
    ],
    [
      'slots that do not cover the hours',
      'parties: [6, 9]',
      '▸parties: [6, 9, 2]',
      'arrivals.slots.parties: has 3 slots, which cover 1 h 30 min, but the hours are 1 h; give 2 slots of 30 min',
    ],
    [
      'slots that cannot cover them',
      'every: 30 min',
      'every: 25 min',
      '6:27: arrivals.slots.parties: has 2 slots, which cover 50 min, but the hours are 1 h; choose a slot that divides 1 h',
    ],
    [
      'two forms of arrivals',
      '  slots:',
      '  peak: { guests: 60 / h, shape: [1] }\n  slots:',
      '5:1: arrivals: gives both slots and peak; give exactly one of slots, steps and peak',
    ],
    [
      'steps that do not cover the hours',
      'slots: { every: 30 min, parties: [6, 9] }',
      '▸steps: [{ for: 50 min, parties: 9 / h }]',
      'arrivals.steps: covers 50 min, but the hours are 1 h; make the steps cover the hours exactly',
    ],
    [
      'a peak without a shape',
      'slots: { every: 30 min, parties: [6, 9] }',
      'peak: { guests: 60 / h, ▸shape: [0, 0] }',
      'arrivals.peak.shape: has no number above zero; write how busy each equal part of the rush is, as relative numbers, such as [3, 5, 9, 7]',
    ],
    [
      'zero machines',
      '\n    - { class: undercounter }',
      ' []',
      '21:3: washing.machines: leaves no dishwasher; add one, such as { class: undercounter }, or write { unlimited: { class: undercounter } }',
    ],
    [
      'zero machines by count',
      '- { class: undercounter }',
      '- { class: undercounter, count: 0 }',
      '21:3: washing.machines: leaves no dishwasher; add one, such as { class: undercounter }, or write { unlimited: { class: undercounter } }',
    ],
    [
      'unknown class of machine',
      'class: undercounter',
      'class: ▸undercouter',
      'washing.machines[0].class: "undercouter" is not a class of dishwasher; did you mean "undercounter"?',
    ],
    [
      'unknown class of ware',
      'like: saucer',
      'like: ▸sauser',
      'ware.saucer.like: "sauser" is not a class of ware; did you mean "saucer"?',
    ],
    [
      'unknown class of ware that would have said how many fill a rack',
      'cup: { price: 4 EUR, perRack: 16, family: china }',
      'cup: { like: ▸medium-cpu, price: 4 EUR, family: china }',
      'ware.cup.like: "medium-cpu" is not a class of ware; did you mean "medium-cup"?',
    ],
    [
      'no price',
      'price: 4 EUR, ',
      '',
      '14:3: ware.cup.price: is missing; write an amount with its currency, such as "4.20 EUR", or "0.3 staff hours"',
    ],
    [
      'nothing tells pieces per rack',
      'perRack: 16, ',
      '',
      '14:3: ware.cup.perRack: is missing: neither its shape nor its class says how many fill a rack of the kind open; count the pieces in a full rack and write perRack: 16',
    ],
    [
      'another currency',
      'price: 5 EUR',
      'price: ▸5 USD',
      'ware.mug.price: "5 USD" is in USD, but the scenario is in EUR; convert it to EUR',
    ],
    [
      'NaN',
      'parties: [6, 9]',
      'parties: [6, ▸.nan]',
      'arrivals.slots.parties[1]: ".nan" is not a number that can be used; write an ordinary number',
    ],
    [
      'Infinity',
      'makers: 2',
      'makers: ▸.inf',
      'counter.makers: so large a number is not a number that can be used; write an ordinary number',
    ],
    [
      'a number too large',
      'makers: 2',
      'makers: ▸1e999',
      'counter.makers: so large a number is not a number that can be used; write an ordinary number',
    ],
    [
      'a word that is none of a list',
      'count: 20',
      'count: 20, whenFull: ▸leaves',
      'seats.whenFull: "leaves" is none of leave, takeaway, wait; did you mean "leave"?',
    ],
    [
      'a misspelt law',
      'making: 40 s',
      'making: { ▸lognromal: { mean: 40 s, sd: 9 s } }',
      'menu.flat-white.making.lognromal: "lognromal" is not a field here; did you mean "lognormal"?',
    ],
    [
      'a mistake inside a law',
      'making: 40 s',
      'making: { lognormal: { mean: ▸40, sd: 9 s } }',
      'menu.flat-white.making.lognormal.mean: 40 is a number without a unit where a duration is needed; write "40 s" or "40 min"',
    ],
    [
      'a mistake inside one form of a field',
      'clearing: atOnce',
      'clearing: { every: ▸10 }',
      'clearing.every: 10 is a number without a unit where a duration is needed; write "10 s" or "10 min"',
    ],
    [
      'a form that is none',
      'clearing: atOnce',
      'clearing: ▸sometimes',
      'clearing: "sometimes" does not say how tables are cleared; write atOnce, or { every: about 10 min, clearers: 1, tripPieces: 10, trip: about 60 s }',
    ],
    [
      'rounds without an interval',
      'clearing: atOnce',
      'clearing: { every: ▸0 min }',
      'clearing.every: "0 min" is not an interval; write atOnce for clearing without rounds',
    ],
    [
      'clearers who are not there',
      '    - { class: undercounter }',
      '    - { class: undercounter }\n  hands: ▸clearers',
      'washing.hands: "clearers" cannot be: tables are cleared at once here, so there are no clearers; write a number of people, or have clearers make rounds',
    ],
    [
      'an unknown family',
      'clearing: atOnce',
      'clearing: atOnce\nracks: { families: { ▸chian: open } }',
      'racks.families.chian: "chian" is not the family of any ware; did you mean "china"?',
    ],
    [
      'an unknown kind of rack',
      'clearing: atOnce',
      'clearing: atOnce\nracks: { owned: { ▸grid-26: 4 } }',
      'racks.owned.grid-26: "grid-26" is neither a listed kind of rack nor one that a family is washed in; did you mean "grid-16"?',
    ],
    [
      'a spell before opening',
      'class: undercounter',
      'class: undercounter, down: [{ from: ▸"06:00", for: 5 min }]',
      'washing.machines[0].down[0].from: "06:00" is before opening; write a time after opening, or use warmUp',
    ],
    [
      'a slip of units in arrivals',
      'slots: { every: 30 min, parties: [6, 9] }',
      '▸steps: [{ for: 60 min, parties: 9000 / s }]',
      'arrivals.steps: brings more than 1,000,000 parties a day; check the unit and the number',
    ],
    [
      'a locale that is none',
      'currency: EUR',
      'currency: EUR\nlocale: ▸en_IE!',
      'locale: "en_IE!" is not a language tag; write one such as en-IE or de (BCP 47)',
    ],
    [
      'a name with a blank',
      '  mug: {',
      '  ▸big mug: { like: mug }\n  mug: {',
      'ware.big mug: "big mug" cannot be a name; use letters, digits and hyphens, at most 60, such as flat-white',
    ],
    [
      'a party size that is none',
      '3: 0 %',
      '▸0: 0 %',
      'guests.partySize.0: "0" is not a party size; write whole numbers from 1 to 99',
    ],
    [
      'a decimal comma in braces',
      'making: 40 s',
      'making: 40 s, ▸5 s: x',
      'menu.flat-white.5 s: "5 s" is not a field here; write a number without a comma, such as 1.5 or 1500',
    ],
    [
      'a law in the wrong form',
      'making: 40 s',
      'making: { lognormal: ▸40 s }',
      'menu.flat-white.making.lognormal: "40 s" is text where a group of fields is needed; write { mean: 42 min, sd: 18 min }',
    ],
    [
      'a list in the wrong form',
      'making: 40 s',
      'making: { measured: ▸40 s }',
      'menu.flat-white.making.measured: "40 s" is text where a list is needed; write [31 min, 40 min]',
    ],
    [
      'a number in a setting',
      'setting: [mug]',
      'setting: [▸5]',
      'menu.tea.setting[0]: 5 is a number where text is needed; write a name, in quotes if it looks like a number',
    ],
    [
      'a reserved name',
      '  mug: {',
      '  ▸takeaway: { like: mug }\n  mug: {',
      'ware.takeaway: "takeaway" is a reserved word and cannot be the name of a ware; choose another name',
    ],
  ])('%s', (_, from, to, problem) => {
    // The place is where ▸ stands; without one the problem tells its own.
    const before = changed(from, to).split('▸');
    const lines = before[0]!.split('\n');
    const place = before.length > 1 ? `${lines.length}:${lines.at(-1)!.length + 1}: ` : '';
    expect(problemsOf(before.join(''))).toEqual([place + problem]);
  });

  it('is said in one line, whatever stands in a name', () => {
    const said = problemsOf(changed('  mug: {', '  "a\\nb": {'));
    expect(said).toContainEqual(expect.stringMatching(/ware\.a\?b: "a b" cannot be a name/));
    expect(said.join('')).not.toContain('\n');
  });

  it('no party sizes', () => {
    const sizes = /partySize: .*/.exec(valid)![0];
    const place = valid.slice(0, valid.indexOf(sizes)).split('\n').length;
    expect(problemsOf(changed(sizes, 'partySize: {}'))).toEqual([
      `${place}:3: guests.partySize: is empty; write { 1: 50 %, 2: 50 % }`,
    ]);
  });

  it('more of anything than a café has is refused before it is read', () => {
    const many = (number: number): string =>
      changed(
        '  mug: {',
        `${Array.from({ length: number }, (_, i) => `  w${i}: { like: mug, prise: 1 }\n`).join('')}  mug: {`,
      );
    expect(problemsOf(many(1299))).toEqual([
      expect.stringMatching(
        /: ware: has 1,3\d\d items of ware, more than the 300 that can be read; leave out those/,
      ),
    ]);
    expect(problemsOf(many(20)).length).toBe(20);
  });

  it('an empty menu, an empty ware', () => {
    const menu = valid.slice(valid.indexOf('menu:'), valid.indexOf('ware:'));
    expect(problemsOf(changed(menu, 'menu: {}\n'))).toEqual([
      '10:1: menu: is empty; add at least one drink, such as flat-white: { share: 100 %, setting: [cup] }',
    ]);
    const ware = valid.slice(valid.indexOf('ware:'), valid.indexOf('seats:'));
    expect(problemsOf(changed(ware, 'ware: {}\n'))).toContain(
      '13:1: ware: is empty; add at least one ware, such as cup: { like: medium-cup }',
    );
  });

  it('a ware that geometry says fits no rack', () => {
    const read = readScenario(changed('perRack: 16, ', ''), 'a.yaml', { piecesPerRack: () => 0 });
    expect(read.ok ? [] : read.problems.map(({ message }) => message)).toContain(
      'does not fit a rack of the kind open, so it could never be washed; name another kind under racks.families, or give perRack',
    );
  });
});

describe('mistakes of the file itself', () => {
  it.each([
    ['empty', '', '1:1: is empty; write a scenario, or let cuptide new write a first one'],
    ['blank', ' \n\n', '1:1: is empty; write a scenario, or let cuptide new write a first one'],
    [
      'only a word',
      'hello',
      '1:1: is not a scenario; begin with lines such as "name: Corner House" and "currency: EUR"',
    ],
    [
      'a list',
      '- a\n- b',
      '1:1: is not a scenario; begin with lines such as "name: Corner House" and "currency: EUR"',
    ],
    [
      'two documents',
      `${valid}---\nname: x\n`,
      '23:1: begins a second document; put only one scenario in a file, without ---',
    ],
    [
      'an unclosed bracket',
      changed('parties: [6, 9] }', 'parties: [6, 9 }'),
      /^6:\d+: cannot be read: a bracket is missing, or a line is not indented .*; check the brackets above/,
    ],
    [
      'line ends of an old machine',
      valid.replaceAll('\n', '\r'),
      '1:1: ends in a carriage return alone; save the file with ordinary line ends (LF or CRLF)',
    ],
    [
      'one such line end',
      changed('  slots:', '\r  slots:'),
      /^6:1: ends in a carriage return alone/,
    ],
    [
      'text of two bytes a character',
      [...valid].join('\0'),
      '1:1: is not text in UTF-8; save the file as UTF-8',
    ],
    [
      'a tab as indentation',
      changed('  slots:', '\tslots:'),
      /^6:1: is indented by a tab; indent with spaces$/,
    ],
    [
      'an unknown alias',
      changed('setting: [mug]', 'setting: *nothing'),
      '12:32: menu.tea.setting: "*nothing" is an alias, but its name was not set before it; set it with &nothing, or write the value out',
    ],
    [
      'a tag of code',
      changed('makers: 2', 'makers: !!js/function "f"'),
      /^18:\d+: has a tag \(a word after !\), which means nothing here; leave the tag out/,
    ],
  ])('%s', (_, text, problem) => {
    const [first] = problemsOf(text);
    if (typeof problem === 'string') expect(first).toBe(problem);
    else expect(first).toMatch(problem);
  });

  it('not UTF-8: names the line', () => {
    const bytes = new TextEncoder().encode(valid);
    bytes[valid.indexOf('staffHour')] = 0xe9;
    expect(problemsOf(bytes)).toEqual(['3:1: is not text in UTF-8; save the file as UTF-8']);
    expect(problemsOf(Uint8Array.from([0xff, 0xfe, 0x6e, 0x00]))).toEqual([
      '1:1: is not text in UTF-8; save the file as UTF-8',
    ]);
  });

  it('too large: refused before it is parsed', () => {
    const large = `${valid}#${'x'.repeat(largestScenarioBytes)}`;
    expect(problemsOf(large)).toEqual([
      '1:1: is larger than 1 MB; a scenario takes a few kilobytes; give the right file',
    ]);
    expect(accepted(`${valid}#${'x'.repeat(largestScenarioBytes - valid.length - 1)}`).ok).toBe(
      true,
    );
  });

  it('exploding aliases: stopped early', () => {
    const levels = Array.from(
      { length: 9 },
      (_, i) => `a${i + 1}: &a${i + 1} [${Array.from({ length: 9 }, () => `*a${i}`).join(', ')}]`,
    );
    const text = `${valid}a0: &a0 [x]\n${levels.join('\n')}\n`;
    expect(problemsOf(text)).toContain(
      '1:1: repeats more than 5000 values through aliases; write the values out',
    );
  });

  it('an alias of what holds it', () => {
    expect(problemsOf(changed('setting: [mug]', 'setting: &loop [*loop]'))[0]).toMatch(
      /^12:\d+: menu\.tea\.setting\[0\]: is an alias of something that contains it; write the values out$/,
    );
  });

  it('endless nesting', () => {
    expect(problemsOf(`name: ${'['.repeat(60)}${']'.repeat(60)}`).join('\n')).toMatch(
      /^1:\d+: name.*is nested more than 40 deep/m,
    );
    expect(problemsOf(`name: ${'['.repeat(20_000)}${']'.repeat(20_000)}`).join('\n')).toMatch(
      /is nested (more than 40 deep|too deeply to be read)/,
    );
  });

  it('a key given twice, at its second place, beside every other problem', () => {
    const text = changed(
      'making: 40 s',
      'making: 40',
      changed('currency: EUR', 'currency: EUR\nname: Again'),
    );
    expect(problemsOf(text)).toEqual([
      '3:1: name: "name" is given twice in the same group; keep one of the two',
      '12:62: menu.flat-white.making: 40 is a number without a unit where a duration is needed; write "40 s" or "40 min"',
    ]);
    expect(problemsOf(changed('3: 0 %', '"2": 0 %'))[0]).toMatch(
      /^8:34: guests\.partySize\.2: "2" is given twice/,
    );
  });

  it.each(['__proto__', 'constructor', 'prototype'])(
    'the key %s, which could reach into objects',
    (key) => {
      expect(problemsOf(changed('seats: {', `seats: { ${key}: { count: 1 },`))).toEqual([
        `17:10: seats.${key}: "${key}" cannot be a name; choose another name`,
      ]);
      expect(problemsOf(changed('  mug: {', `  ${key}: { like: mug }\n  mug: {`))).toEqual([
        `16:3: ware.${key}: "${key}" cannot be a name; choose another name`,
      ]);
      expect(({} as Record<string, unknown>)['count']).toBeUndefined();
    },
  );
});

describe('all problems at once, in the order of the file', () => {
  it('names every missing part', () => {
    const problems = problemsOf('name: x\n');
    expect(problems.map((line) => line.replace(/^1:1: (\w+): is missing; .*$/, '$1'))).toEqual([
      'arrivals',
      'currency',
      'hours',
      'menu',
      'seats',
      'staffHour',
      'ware',
      'washing',
    ]);
  });

  it('mixes mistakes of fields, of names and of times', () => {
    const text = [
      ['share: 75 %', 'share: 70 %'],
      ['to: "08:00"', 'to: "06:00"'],
      ['making: 45 s', 'making: 45'],
      ['setting: [mug]', 'setting: [mugg]'],
      ['count: 20', 'count: 0'],
    ].reduce((sofar, [from, to]) => changed(from!, to!, sofar), valid);
    expect(problemsOf(text).map((line) => line.split(': ')[1])).toEqual([
      'hours.to',
      'menu',
      'menu.tea.setting[0]',
      'seats.count',
      'counter.making',
    ]);
  });
});

describe('values marked with what they rest on', () => {
  const marked = (mark: string): string => changed('staysIn: 40 %', `staysIn: ${mark}`);

  it('become inputs, and the value counts as if it stood alone', () => {
    const read = accepted(
      marked('{ value: 40 %, basis: measured, range: [35 %, 45 %], source: "three mornings" }'),
    );
    expect(read.scenario).toEqual(accepted(valid).scenario);
    expect(read.inputs.find(({ path }) => path === 'guests.staysIn')).toEqual({
      path: 'guests.staysIn',
      at: ['guests', 'staysIn'],
      value: '40 %',
      basis: 'measured',
      range: ['35 %', '45 %'],
      source: 'three mornings',
      origin: 'file',
    });
  });

  it('may be whole laws, or single values in them', () => {
    const law = { law: 'lognormal', meanMs: 2_400_000, sdMs: 600_000 };
    const whole = accepted(
      changed(
        'staysIn: 40 %',
        'staysIn: 40 %\n  dwell: { value: { lognormal: { mean: 40 min, sd: 10 min } }, basis: published, range: [30 min, { exponential: 50 min }] }',
      ),
    );
    expect(whole.scenario.guests.dwell).toEqual([law]);
    const inner = accepted(
      changed(
        'staysIn: 40 %',
        'staysIn: 40 %\n  dwell: { lognormal: { mean: { value: 40 min, basis: measured, range: [30 min, 45 min] }, sd: 10 min } }',
      ),
    );
    expect(inner.scenario.guests.dwell).toEqual([law]);
    expect(
      inner.inputs
        .filter(({ path }) => path.startsWith('guests.dwell'))
        .map(({ path, basis }) => [path, basis]),
    ).toEqual([['guests.dwell.lognormal.mean', 'measured']]);
  });

  it.each([
    [
      '{ value: 40, basis: measured }',
      '9:21: guests.staysIn: 40 is more than the whole: a share without % is between 0 and 1; write "40 %"',
    ],
    [
      '{ value: 40 %, basis: guessed }',
      '9:34: guests.staysIn.basis: "guessed" is not a basis (measured, published, practice, assumed); choose one of measured, published, practice, assumed',
    ],
    [
      '{ value: 40 %, bases: measured }',
      '9:27: guests.staysIn.bases: "bases" is not a field of a marked value (value, basis, range, source); did you mean "basis"?',
    ],
    [
      '{ value: 40 %, range: 35 % }',
      '9:34: guests.staysIn.range: "35 %" is not a pair of values; write the lowest and the highest plausible value, such as [20 min, 40 min]',
    ],
    [
      '{ value: 40 %, range: [35, 45 %] }',
      '9:35: guests.staysIn.range[0]: 35 is more than the whole: a share without % is between 0 and 1; write "35 %"',
    ],
    [
      '{ value: 40 %, range: [35 %, 4 min] }',
      '9:41: guests.staysIn.range[1]: "4 min" has the unit "min" where a share is needed (%); write "4 %"',
    ],
    [
      '{ value: 40 %, range: [45 %, 35 %] }',
      '9:27: guests.staysIn.range: has its ends the wrong way round; write the lowest plausible value first',
    ],
    [
      '{ value: 40 %, range: [45 %, 55 %] }',
      '9:21: guests.staysIn: "40 %" is outside its own range; widen the range or correct the value',
    ],
    [
      '{ value: { value: 40 % } }',
      '9:14: guests.staysIn.value: is marked twice; keep only one of the marks',
    ],
  ])('%s', (mark, problem) => {
    expect(problemsOf(marked(mark))[0]).toBe(problem);
  });

  it('may have a range of a share that alone would not add up', () => {
    expect(
      problemsOf(changed('share: 75 %', 'share: { value: 75 %, range: [70 %, 80 %] }')),
    ).toEqual([]);
    expect(
      problemsOf(changed('price: 4 EUR', 'price: { value: 4 EUR, range: [3 EUR, 5 USD] }'))[0],
    ).toMatch(/range\[1\]: "5 USD" is in USD/);
  });

  it('leaves a ware called value alone', () => {
    expect(
      accepted(changed('  mug: {', '  value: { like: mug }\n  mug: {')).scenario.ware['value']
        ?.like,
    ).toBe('mug');
  });
});

describe('defaults', () => {
  it('fill what the file leaves out, and are told as such', () => {
    const { scenario, inputs } = accepted(valid);
    expect(scenario.level).toBe(0.95);
    expect(scenario.seats).toMatchObject({ whenFull: 'wait', waitLimit: 300_000 });
    const drinks = inputs.find(({ path }) => path === 'guests.drinksEach')!;
    expect(drinks).toMatchObject({
      value: 1.1,
      basis: 'practice',
      origin: 'default',
      range: [1, 1.4],
    });
    expect(inputs.filter(({ path }) => path.startsWith('hours'))).toEqual([]);
    expect(inputs.find(({ path }) => path === 'ware.saucer.perRack')).toMatchObject({
      value: 30,
      origin: 'default',
      basis: 'assumed',
    });
    expect(inputs.find(({ path }) => path === 'ware.cup.price')).toMatchObject({
      value: '4 EUR',
      origin: 'file',
      basis: 'assumed',
      range: null,
    });
  });

  it('do not add rounds to tables cleared at once, nor a law beside one that is given', () => {
    const { scenario } = accepted(
      changed('staysIn: 40 %', 'staysIn: 40 %\n  dwell: { exponential: 20 min }'),
    );
    expect(scenario.clearing).toBe('atOnce');
    expect(scenario.guests.dwell).toEqual([{ law: 'exponential', meanMs: 1_200_000 }]);
  });

  it('have ranges that are valid where they stand', () => {
    // Every default and class figure, written into the file with its own range, must be accepted.
    const { inputs, raw, positionOf } = accepted(valid);
    const marked = inputs.filter(({ origin, range }) => origin === 'default' && range !== null);
    expect(marked.length).toBeGreaterThan(20);
    for (const { at, value, basis, range, source } of marked) {
      const read = checkTree(
        withValueAt(raw, at, { value, basis, range, source }),
        positionOf,
        'a.yaml',
      );
      expect(read.ok ? [] : read.problems.map(({ message }) => message), at.join('.')).toEqual([]);
    }
  });
});

describe('warnings for what is legal and unwise', () => {
  it.each([
    [
      '    - { class: undercounter }',
      '    - { class: undercounter }\n  partLoadWait: never',
      ['no-part-load-wait'],
    ],
    ['parties: [6, 9]', 'parties: [0, 0]', ['no-guests']],
    ['count: 20', 'count: 1', ['party-larger-than-house']],
    ['setting: [mug]', 'setting: takeaway', ['unused-ware']],
    // What people do varies in the reference data, so a house that leaves it out is not warned of it.
    ['count: 20', 'count: 30', []],
    ['clearing: atOnce', 'clearing: {}', []],
    ['clearing: atOnce', 'clearing: { every: 10 min }', ['constant-habit']],
    [
      '    - { class: undercounter }',
      '    - { class: undercounter }\n  partLoadWait: 6 min\n  partLoadsEvery: 20 min',
      ['constant-habit', 'constant-habit'],
    ],
    ['    - { class: undercounter }', '    - { class: undercounter }\n  partLoadWait: 0 s', []],
  ])('%s → %s', (from, to, codes) => {
    expect(accepted(changed(from, to)).warnings.map(({ code }) => code)).toEqual(codes);
  });
});
