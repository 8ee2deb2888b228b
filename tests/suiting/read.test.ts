import { describe, expect, test } from 'vitest';
import { layerShots } from '../../src/suiting/recipes.js';
import { readSuit } from '../../src/suiting/read.js';
import { suitSchema } from '../../src/suiting/schema.js';
import { suit } from '../../src/suiting/suit.js';
import { drink, input, mediumCup, piece, section } from './parts.js';

describe('the section', () => {
  test('units make no difference', () => {
    const metric = section(
      'papers: { a: { brim: 295.735295625 ml } }\nroom: 20 °C\nshot: { dose: 28.349523125 g }\nmachine: { underSpout: 76.2 mm }',
    );
    const us = section(
      'papers: { a: { brim: 10 fl oz } }\nroom: 68 °F\nshot: { dose: 1 oz }\nmachine: { underSpout: 3 in }',
    );
    expect(us).toEqual(metric);
  });

  test('foam is a depth or a share, a cup cold, warmed or at a temperature', () => {
    const { drinks } = section(
      'drinks: { a: { foam: 10 mm, cup: warmed }, b: { foam: 15 %, cup: 45 °C }, c: { foam: 0.5 in, cup: cold } }',
    );
    expect(drinks!.a).toMatchObject({ foam: { depthMm: 10 }, cup: 'warmed' });
    expect(drinks!.b).toMatchObject({ foam: { share: 0.15 }, cup: 45 });
    expect(drinks!.c).toMatchObject({ foam: { depthMm: 12.7 }, cup: 'cold' });
  });

  test.each(
    [
      ['shot: { dose: 20 }', ['shot', 'dose'], 'number without a unit'],
      ['drinks: { a: { foam: 10 } }', ['drinks', 'a', 'foam'], 'neither a depth nor a share'],
      ['drinks: { a: { cup: hot } }', ['drinks', 'a', 'cup'], 'write cold, warmed'],
      ['drinks: { a: { fill: 105 % } }', ['drinks', 'a', 'fill'], 'more than the whole'],
    ].map(([yaml, path, words]) => ({ yaml: yaml as string, path, words: words as string })),
  )('$yaml is refused with a remedy', ({ yaml, path, words }) => {
    let issues: { path: PropertyKey[]; message: string }[] = [];
    try {
      section(yaml);
    } catch (error) {
      issues = (error as { issues: typeof issues }).issues;
    }
    expect(issues).toHaveLength(1);
    expect(issues[0]!.path).toEqual(path);
    expect(issues[0]!.message).toContain(words);
  });

  test('unknown keys are refused', () => {
    expect(suitSchema.safeParse({ drink: {} }).success).toBe(false);
    expect(suitSchema.safeParse({ drinks: { a: { milk: 'oat' } } }).success).toBe(false);
  });
});

describe('shots', () => {
  test('later ones override field by field, and a new way of saying a thing drops the old one', () => {
    expect(
      layerShots([{ dose: 20, yield: 40, extraction: 0.2 }, undefined, { ratio: 1.5 }]),
    ).toEqual({ dose: 20, extraction: 0.2, ratio: 1.5 });
    expect(layerShots([{ dose: 20, yield: 40, extraction: 0.2 }, { tds: 0.1 }])).toEqual({
      dose: 20,
      yield: 40,
      tds: 0.1,
    });
    expect(layerShots([{ dose: 20, ratio: 2 }, { dose: 18 }])).toEqual({ dose: 18, ratio: 2 });
  });

  test('TDS and extraction that agree are both taken', () => {
    const byTds = readSuit(
      input('shot: { dose: 20 g, yield: 40 g, tds: 10 % }\ndrinks: { flat-white: {} }'),
    );
    const both = readSuit(
      input(
        'shot: { dose: 20 g, yield: 40 g, tds: 10 %, extraction: 20 % }\ndrinks: { flat-white: {} }',
      ),
    );
    expect(byTds.problems).toEqual([]);
    expect(both.problems).toEqual([]);
    expect(byTds.plans[0]!.house!.recipe.brew.solidsG).toBeCloseTo(4, 12);
  });
});

describe('bad input is told where it stands, and nothing is computed from it', () => {
  test.each([
    ['fill: 95 %, pours: 150 ml', 'suit.drinks.flat-white.pours', 'which says the same'],
    ['pours: 210 ml', 'suit.drinks.flat-white.pours', 'more than fits below the brim'],
    ['vessel: shot-glass', 'suit.drinks.flat-white.vessel', 'is not in ware'],
    ['paper: smal', 'suit.drinks.flat-white.paper', 'did you mean "small"?'],
    ['share: 0 %', 'suit.drinks.flat-white.share', 'some of the shot'],
    ['served: 105 °C', 'suit.drinks.flat-white.served', 'hotter than 100'],
    [
      'shot: { dose: 20 g, yield: 40 g, extraction: 31 % }',
      'suit.drinks.flat-white.shot.extraction',
      'over 30 %',
    ],
    [
      'shot: { dose: 20 g, yield: 40 g, tds: 16 % }',
      'suit.drinks.flat-white.shot.tds',
      'over 30 %',
    ],
    [
      'shot: { dose: 20 g, yield: 40 g, tds: 10 %, extraction: 22 % }',
      'suit.drinks.flat-white.shot.tds',
      'must equal',
    ],
    ['shot: { yield: 40 g, ratio: 2 }', 'suit.drinks.flat-white.shot.ratio', 'which says the same'],
    ['shot: { dose: 20 g, yield: 8 g }', 'suit.drinks.flat-white.shot.yield', '% of the shot'],
    ['shot: { dose: 20 g, yield: 0 g }', 'suit.drinks.flat-white.shot.yield', 'is not above zero'],
    [
      'shot: { dose: 20 g, extraction: 0 % }',
      'suit.drinks.flat-white.shot.extraction',
      'means that nothing is extracted',
    ],
    ['shot: { dose: 120 g, yield: 240 g }', 'suit.drinks.flat-white.share', 'more than the liquid'],
    ['takeaway: { fill: 88 % }', 'suit.drinks.flat-white.takeaway', 'has no paper cup'],
    [
      'top: nothing, shot: { dose: 120 g, yield: 240 g }',
      'suit.drinks.flat-white.shot',
      'more than fits below the brim',
    ],
  ])('%s', (made, path, words) => {
    const answer = suit(
      input(
        `papers: { small: { nominal: 8 fl oz, brim: 280 ml } }\ndrinks: { flat-white: { ${made} } }`,
      ),
    );
    expect(answer.problems.map((problem) => problem.path.join('.'))).toEqual([path]);
    expect(answer.problems[0]!.message).toContain(words);
    expect(answer.problems[0]!.remedy).not.toBe('');
    if (!made.startsWith('paper') && !made.startsWith('takeaway'))
      expect(answer.drinks[0]!.house).toBeNull();
    expect(answer.drinks[0]!.takeaway).toBeNull();
    expect(answer.drinks[0]!.ratio).toBeNull();
  });

  test('a shot of nothing that drinks share is one problem', () => {
    const { problems } = suit(
      input('shot: { dose: 19 g, yield: 0 g }\ndrinks: { flat-white: {}, latte: {} }', {
        menu: [drink('flat-white', ['medium-cup'], 0.5), drink('latte', ['medium-cup'], 0.5)],
      }),
    );
    expect(problems).toHaveLength(1);
    expect(problems[0]!.message).toContain('is not above zero');
  });

  test('fill over the brim on the takeaway side only leaves the house as it is', () => {
    const answer = suit(
      input(
        'papers: { small: { brim: 280 ml } }\ndrinks: { flat-white: { paper: small, takeaway: { pours: 300 ml } } }',
      ),
    );
    expect(answer.problems.map((problem) => problem.path)).toEqual([
      ['suit', 'drinks', 'flat-white', 'takeaway', 'pours'],
    ]);
    expect(answer.drinks[0]!.house).not.toBeNull();
    expect(answer.drinks[0]!.takeaway).toBeNull();
  });

  test('a foot wider than its rim takes the vessel out, and its drink with it', () => {
    const answer = suit(
      input('drinks: { flat-white: {} }', { ware: [{ ...mediumCup, footMm: 95 }] }),
    );
    expect(answer.problems[0]).toMatchObject({ path: ['ware', 'medium-cup', 'foot'], value: 95 });
    expect(answer.ware).toEqual([]);
    expect(answer.drinks[0]!.house).toBeNull();
  });

  test('a vessel without a brim, unknown drinks, ware and papers, another currency: all at once', () => {
    const answer = suit(
      input(
        'coffee: 20 USD\nmilk: 1 USD\npapers: { small: {}, odd: { nominal: 12 fl oz, brim: 280 ml } }\nware: { mug: { wall: 4 mm } }\nguests: { easyHandle: 5 %, instead: { medium-cup: eazy-cup } }\ndrinks: { flat-white: {}, flatwhite: {} }',
        { ware: [{ ...mediumCup, brimMl: null }, piece('easy-cup')] },
      ),
    );
    expect(answer.problems.map((problem) => problem.path.join('.')).sort()).toEqual([
      'suit.coffee',
      'suit.drinks.flatwhite',
      'suit.guests.instead.medium-cup',
      'suit.milk',
      'suit.papers.odd.brim',
      'suit.papers.small',
      'suit.ware.mug',
      'ware.medium-cup.brim',
    ]);
  });

  test('one bad shot behind many drinks is told once', () => {
    const menu = [drink('a', ['medium-cup'], 0.5), drink('b', ['medium-cup'], 0.5)];
    const answer = suit(input('shot: { extraction: 40 % }\ndrinks: { a: {}, b: {} }', { menu }));
    expect(answer.problems.map((problem) => problem.path.join('.'))).toEqual([
      'suit.shot.extraction',
    ]);
  });
});

describe('silence is filled and told', () => {
  test('every figure not given is an assumption with a range and a source', () => {
    const { assumptions, problems } = readSuit(
      input('papers: { small: { nominal: 8 fl oz } }\ndrinks: { flat-white: { paper: small } }'),
    );
    expect(problems).toEqual([]);
    const paths = assumptions.map((a) => a.path);
    expect(paths).toEqual(
      expect.arrayContaining([
        'suit.room',
        'suit.parity',
        'suit.shot.dose',
        'suit.shot.ratio',
        'suit.shot.extraction',
        'suit.drinks.flat-white.fill',
        'suit.drinks.flat-white.takeaway.fill',
        'suit.drinks.flat-white.served',
      ]),
    );
    expect(new Set(paths).size).toBe(paths.length);
    for (const { value, range, source } of assumptions) {
      expect(value).toBeGreaterThanOrEqual(range[0]);
      expect(value).toBeLessThanOrEqual(range[1]);
      expect(source).not.toBe('');
    }
  });

  test('what is given is not assumed', () => {
    const { assumptions } = readSuit(
      input(
        'room: 19 °C\nparity: 5 %\nshot: { dose: 18 g, yield: 36 g, extraction: 19 % }\ndrinks: { flat-white: { fill: 93 %, served: 60 °C } }',
      ),
    );
    expect(
      assumptions.map((a) => a.path).filter((path) => /room|parity|shot|drinks/.test(path)),
    ).toEqual([]);
  });

  test('to take away it is made as in the house, but for what is said, and never filled alike', () => {
    const [plan] = readSuit(
      input(
        'papers: { small: { brim: 280 ml } }\ndrinks: { flat-white: { paper: small, share: 80 %, foam: 5 mm, fill: 94 %, served: 60 °C, takeaway: { share: 100 %, shot: { dose: 22 g } } } }',
      ),
    ).plans;
    expect(plan!.house!.recipe).toMatchObject({
      shotShare: 0.8,
      fill: 0.94,
      servedC: 60,
      foam: { depthMm: 5 },
    });
    expect(plan!.takeaway!.recipe).toMatchObject({
      shotShare: 1,
      fill: 0.88,
      servedC: 60,
      foam: { depthMm: 5 },
    });
    expect(plan!.takeaway!.recipe.brew.doseG).toBe(22);
  });
});
