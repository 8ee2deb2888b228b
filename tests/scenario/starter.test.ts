import { describe, expect, it } from 'vitest';
import {
  currencyIn,
  numberIn,
  readAmount,
  readClock,
  readClosing,
  readCurrency,
  readMinutes,
  readShare,
  readWhole,
  readYes,
  type Read,
} from '../../src/scenario/starter-answers.js';
import {
  readMenu,
  starterDrinks,
  starterWare,
  vesselNames,
  vesselOf,
  vessels,
} from '../../src/scenario/starter-drinks.js';
import {
  questionKeys,
  questions,
  type StarterAnswers,
} from '../../src/scenario/starter-questions.js';
import { readAll } from '../../src/scenario/starter-reading.js';
import { busiestAt, partsOf, shapes, usualShape } from '../../src/scenario/starter-shapes.js';
import { starter } from '../../src/scenario/starter.js';
import { wareClass } from '../../src/catalogue/catalogue.js';
import { compile } from '../../src/scenario/compile.js';
import { saucerFitsOf, servedTogether } from '../../src/scenario/saucer-fits.js';
import { readScenario } from '../../src/scenario/read-scenario.js';

const valueOf = <T>(read: Read<T>): T | string => (read.ok ? read.value : `refused: ${read.why}`);
const accepted = (text: string) => {
  const read = readScenario(text, 'starter.yaml');
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read;
};

/** A drink in each of the vessels there are. */
const everyVessel = vesselNames.map((name, i) => {
  const menu = readMenu(`drink ${i}: ${name}`);
  if (!menu.ok) throw new Error(menu.why);
  return menu.value[0]!;
});

describe('what people type', () => {
  it.each([
    ['50', 0.5],
    ['50%', 0.5],
    ['50 %', 0.5],
    ['0.5', 0.5],
    ['.5', 0.5],
    ['0,45', 0.45],
    ['about 45 %', 0.45],
    ['half', 0.5],
    ['3/4', 0.75],
    ['Everyone', 1],
    ['100', 1],
    ['1', 0.01],
    ['0', 0],
  ])('"%s" is a share', (text, share) => expect(valueOf(readShare(text))).toBeCloseTo(share, 9));

  it.each([
    ['7am', '7', 420],
    ['7:30', '07.30', 450],
    ['0730', '7h30', 450],
    ['2pm', '2 p.m.', 840],
    ['12am', '0:00', 0],
    ['12pm', 'noon', 720],
    ['midnight', '24:00', 1440],
    ["7 o'clock", 'at 7', 420],
  ])('"%s" and "%s" are a time of day', (one, other, minutes) =>
    expect([valueOf(readClock(one)), valueOf(readClock(other))]).toEqual([minutes, minutes]),
  );

  it('takes a plain hour after opening for one of the afternoon', () => {
    expect(valueOf(readClosing('3', 660))).toBe(900);
    expect(valueOf(readClosing('11', 420))).toBe(660);
    expect(readClosing('6am', 420).ok).toBe(false);
    expect(readClosing('07:00', 420).ok).toBe(false);
  });

  it.each([
    ['40', 40],
    ['40 min', 40],
    ['1 h', 60],
    ['1h30', 90],
    ['1 hour and 15 minutes', 75],
    ['half an hour', 30],
    ['30 to 45', 37.5],
    ['30-45 min', 37.5],
  ])('"%s" is a stay', (text, minutes) => expect(valueOf(readMinutes(text))).toBe(minutes));

  it.each([
    ['gbp', 'GBP'],
    ['£', 'GBP'],
    ['pounds', 'GBP'],
    ['Euro', 'EUR'],
    ['€', 'EUR'],
    ['$', 'USD'],
    ['A$', 'AUD'],
    ['swiss francs', 'CHF'],
  ])('"%s" is a currency', (text, code) => expect(valueOf(readCurrency(text))).toBe(code));

  it.each([
    ['£14', 'GBP', '14'],
    ['14 quid an hour', 'GBP', '14'],
    ['14,50', 'EUR', '14.5'],
    ['€ 22.50', 'EUR', '22.5'],
    ['$30', 'AUD', '30'],
    ['1,200', 'JPY', '1200'],
  ])('"%s" is an amount of %s', (text, currency, amount) =>
    expect(valueOf(readAmount(text, currency))).toBe(amount),
  );

  it('sees one number in a text, with thousands or a decimal comma', () => {
    expect(
      ['1,200', '1.200', '14,5', 'about 40 seats', 'two', 'none of it', 'many', '1e9'].map(
        numberIn,
      ),
    ).toEqual([1200, 1200, 14.5, 40, 2, 0, null, null]);
  });

  it('says in a clause why it cannot take an answer', () => {
    const refusals = [
      readShare('140 %'),
      readShare('-5'),
      readClock('25:00'),
      readClock('soon'),
      readMinutes('0'),
      readMinutes('a while'),
      readWhole('12.5', 'seats', 0, 100),
      readWhole('-4', 'seats', 0, 100),
      readWhole('101', 'seats', 0, 100),
      readAmount('£14', 'EUR'),
      readAmount('0', 'EUR'),
      readCurrency('shells'),
      readYes('perhaps'),
    ].map((read) => (read.ok ? 'taken' : read.why));
    for (const why of refusals) expect(why).toMatch(/^is (not|in|neither)/);
    expect(currencyIn('nothing here')).toBeNull();
  });
});

describe('a menu as typed', () => {
  const served = (text: string) => {
    const read = readMenu(text);
    return read.ok ? read.value.map(({ id, vessel }) => `${id} ${vessel}`) : read.why;
  };

  it('takes names as people write them, slips too', () => {
    expect(served('Flat White, capucino; Caffè latte & long black and Mocha')).toEqual([
      'flat-white medium-cup',
      'cappuccino medium-cup',
      'latte large-cup',
      'long-black medium-cup',
      'mocha large-cup',
    ]);
    expect(served('flat-white, americano, piccolo')).toEqual([
      'flat-white medium-cup',
      'long-black medium-cup',
      'piccolo small-glass',
    ]);
  });

  it('takes any drink once it is said what it is served in', () => {
    expect(served('latte in a glass, matcha in a small cup, kombucha: tumbler')).toEqual([
      'latte-in-a-glass latte-glass',
      'matcha-in-a-small-cup small-cup',
      'kombucha tumbler',
    ]);
    expect(readMenu('golden milk', { 'golden milk': 'mug' })).toMatchObject({
      ok: true,
      value: [{ id: 'golden-milk', vessel: 'mug' }],
    });
  });

  it('asks for what it does not know, and names what there is', () => {
    // Names that every object has.
    for (const name of ['constructor', '__proto__', 'toString'])
      expect(readMenu(name)).toMatchObject({ ok: false, unserved: [name] });
    expect(readMenu('tea, golden milk, sahlep')).toMatchObject({
      ok: false,
      unserved: ['golden milk', 'sahlep'],
      why: 'names "golden milk", "sahlep"; say what it is served in, such as "golden milk in a mug"',
    });
    expect(served('sahlep in a bucket')).toMatch(
      /"a bucket", which is none of espresso cup, small cup/,
    );
    expect(served(' , ')).toBe('names no drink');
  });

  it('knows vessels by name, number and other words', () => {
    expect(['3', 'a big cup', 'the Mug', 'glass', 'tall glass', '9', 'hat'].map(vesselOf)).toEqual([
      'medium-cup',
      'large-cup',
      'mug',
      'tumbler',
      'latte-glass',
      null,
      null,
    ]);
    expect(vesselNames).toHaveLength(8);
  });

  it('serves every cup and glass on a saucer that it sits on', () => {
    const { scenario, inputs } = accepted(starter({ ...readAll({}).answers!, menu: everyVessel }));
    const fits = saucerFitsOf(scenario, inputs).filter((fit) => servedTogether(scenario.menu, fit));
    expect(fits.map(({ cup, saucer }) => `${cup} on ${saucer}`)).toHaveLength(6);
    for (const { cup, saucer, fits: sits } of fits) expect(sits, `${cup} on ${saucer}`).toBe(true);
  });

  it('rests on classes of ware that there are', () => {
    const pieces = Object.values(vessels).flatMap(({ setting }) => [...setting]);
    for (const piece of pieces) expect(wareClass(starterWare[piece]![0]), piece).not.toBeNull();
  });
});

describe('the shape of the day', () => {
  it('is the usual one for the hours, and peaks where it says', () => {
    expect([usualShape(420, 660), usualShape(600, 900), usualShape(420, 1080)]).toEqual([
      'morning',
      'midday',
      'all-day',
    ]);
    expect(busiestAt('morning', 420, 660)).toBe(540);
    expect(busiestAt('all-day', 420, 1080)).toBe(525);
  });

  it('has equal parts that cover any hours', () => {
    for (const shape of Object.keys(shapes) as (keyof typeof shapes)[])
      for (const [from, to] of [
        [0, 1440],
        [420, 425],
        [445, 1013],
      ] as const) {
        const parts = partsOf(shape, from, to);
        expect(parts.length).toBeGreaterThan(0);
        expect(parts.every((weight) => weight > 0)).toBe(true);
      }
  });
});

describe('the questions', () => {
  it('take their own usual answers, and their own way of showing a value', () => {
    const { answers, wrong } = readAll({});
    expect(wrong).toEqual({});
    const again = readAll(
      Object.fromEntries(
        questionKeys.map((key) => [key, questions[key].show(answers![key] as never)]),
      ),
    );
    expect(again.answers).toEqual(answers);
  });

  it('name all that is wrong at once', () => {
    const { answers, wrong } = readAll({ seats: 'many', stay: '140 %', machine: 'bucket' });
    expect(answers).toBeNull();
    expect(Object.keys(wrong)).toEqual(['seats', 'stay', 'machine']);
  });

  it('take an amount to say which currency it is in, unless that was answered', () => {
    expect(readAll({ staffHour: '£14' }).answers).toMatchObject({
      currency: 'GBP',
      staffHour: '14',
    });
    expect(readAll({ cupPrice: '€6' }).answers).toMatchObject({ currency: 'EUR', cupPrice: '6' });
    expect(readAll({ staffHour: '£14', currency: 'EUR' }).wrong).toHaveProperty('staffHour');
  });

  it('read machines and shapes by number, name and count', () => {
    const machine = (text: string) => readAll({ machine: text }).answers?.machine;
    expect(machine('2')).toEqual({ class: 'hood', count: 1 });
    expect(machine('two hoods')).toEqual({ class: 'hood', count: 2 });
    expect(machine('1')).toEqual({ class: 'undercounter', count: 1 });
    expect(machine('2 under-counter machines')).toEqual({ class: 'undercounter', count: 2 });
    expect(readAll({ shape: '3' }).answers?.shape).toBe('all-day');
    expect(readAll({ shape: 'Mid-day' }).answers?.shape).toBe('midday');
  });
});

describe('a starter', () => {
  const answers: StarterAnswers = {
    ...readAll({ seats: '44', guests: '90', from: '7:30', to: '10:30', stay: '45' }).answers!,
    name: 'Corner "House": #1',
    menu: starterDrinks,
  };

  it('is valid with every drink, and says what was answered', () => {
    const { scenario, warnings, raw } = accepted(starter(answers));
    expect(warnings).toEqual([]);
    expect(scenario).toMatchObject({
      name: answers.name,
      seats: { count: 44 },
      guests: { staysIn: 0.45 },
      staffHour: { currency: 'EUR', minor: 2200 },
      locale: 'en-IE',
      hours: { from: 27_000_000, to: 37_800_000 },
    });
    expect(Object.keys(scenario.menu)).toEqual(starterDrinks.map(({ id }) => id));
    expect(raw).toHaveProperty('arrivals.peak.guests', '90 / h');
  });

  it.each(starterDrinks.map((drink) => [drink.id, drink] as const))(
    'is valid with %s alone',
    (id, drink) => {
      const { scenario, warnings } = accepted(starter({ ...answers, menu: [drink] }));
      expect(warnings).toEqual([]);
      expect(scenario.menu[id]?.share).toBe(1);
    },
  );

  it.each(vesselNames)('is valid with an unknown drink in a %s', (vessel) => {
    const menu = readMenu(`Ümlaut #1: ${vessel}`);
    const { scenario } = accepted(starter({ ...answers, menu: menu.ok ? menu.value : [] }));
    expect(scenario.menu['umlaut-1']?.name).toBe('Ümlaut #1');
  });

  it('puts the price of a cup on every cup, and on nothing else', () => {
    const { raw } = accepted(starter({ ...answers, menu: everyVessel, cupPrice: '6.5' }));
    const priced = Object.entries((raw as { ware: Record<string, object> }).ware)
      .filter(([, ware]) => 'price' in ware)
      .map(([id]) => id);
    expect(priced).toEqual(['espresso-cup', 'small-cup', 'medium-cup', 'large-cup', 'mug']);
    expect(raw).toHaveProperty('ware.mug.price', '6.5 EUR');
  });

  it('writes times as a British house does for pounds', () => {
    const { scenario } = accepted(starter({ ...answers, currency: 'GBP', staffHour: '14' }));
    expect(scenario.locale).toBe('en-GB');
    expect(
      new Intl.DateTimeFormat(scenario.locale, {
        hour: 'numeric',
        minute: '2-digit',
        timeZone: 'UTC',
      }).format(new Date(Date.UTC(2025, 0, 1, 14))),
    ).toBe('14:00');
  });

  it('puts the stay, the machines and shared racks into the model', () => {
    const { scenario } = accepted(
      starter({
        ...answers,
        dwell: 30,
        machine: { class: 'hood', count: 2 },
        shareRacks: true,
      }),
    );
    const model = compile(scenario);
    expect(model.washing.machines).toHaveLength(2);
    const family = (id: string): number | undefined =>
      model.ware.find((one) => one.id === id)?.family;
    expect(family('saucer')).toBe(family('medium-cup'));
    expect(family('teaspoon')).toBe(family('medium-cup'));
    expect(family('tumbler')).not.toBe(family('medium-cup'));
    expect(starter({ ...answers, dwell: 30 })).toMatch(/mean: 30 min, sd: 13\.2 min/);
  });

  it('says which shape it took, and has the two others beside it', () => {
    const text = starter(answers);
    expect(text).toMatch(/# morning: .*\n {4}shape: \[3, 5/);
    expect(text).toMatch(/# midday: shape: \[/);
    expect(text).toMatch(/# all-day: shape: \[/);
  });
});
