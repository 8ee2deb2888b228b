import { beforeAll, describe, expect, it } from 'vitest';
import { cardStyle } from '../../../src/questions/cards/card-style.js';
import { trainerCards, type Card, type CardInput } from '../../../src/questions/cards/cards.js';
import { formatsFor } from '../../../src/tell/format.js';
import { english } from '../../../src/tell/words.js';
import { houses, inputOf } from './house.js';
import { stressedHouse, TRICKS } from './stress.js';

const cardNamed = (cards: readonly Card[], id: string): string =>
  cards.find((card) => card.id === id)!.html;
/** Text as a reader sees it: no tags, entities resolved. */
const textOf = (html: string): string =>
  html
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ');
/** Tags that a card is made of; data can bring no other, nor any attribute that runs or fetches. */
const TAGS = new Set([
  'article',
  'header',
  'footer',
  'p',
  'bdi',
  'span',
  'h3',
  'h4',
  'div',
  'ol',
  'ul',
  'li',
  'b',
  'table',
  'thead',
  'tbody',
  'tr',
  'th',
  'td',
  'dl',
  'dt',
  'dd',
  'svg',
  'g',
  'path',
  'rect',
  'circle',
  'text',
  'title',
  'desc',
]);

function unsafe(html: string): string[] {
  const tags = [...html.matchAll(/<\/?([a-zA-Z][^\s>/]*)([^>]*)>/g)];
  const bare = html.replace(/<\/?[a-zA-Z][^<>]*>/g, '').match(/[<>]/g) ?? [];
  return [
    ...bare,
    ...tags
      .filter(
        ([, name, rest]) =>
          !TAGS.has(name!) ||
          /\son\w+\s*=|\b(?:href|src)\s*=|javascript:/i.test(rest!.replace(/"[^"]*"/g, '""')),
      )
      .map(([whole]) => whole),
  ];
}

describe.each(houses)('cards of $file', ({ text }) => {
  let input: CardInput;
  let cards: readonly Card[];
  beforeAll(async () => {
    input = await inputOf(text);
    cards = trainerCards(input);
  }, 120_000);

  it('are one of each kind at least, each an article with an id of its own, safe and the same twice', () => {
    const ids = cards.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of [
      'card-rack-1',
      'card-clearing',
      'card-machine-top',
      'card-safety',
      'card-breakage',
    ])
      expect(ids).toContain(id);
    for (const { id, html, title } of cards) {
      expect(html.startsWith(`<article class="card`)).toBe(true);
      expect(html).toContain(`id="${id}"`);
      expect(textOf(html)).toContain(title);
      expect(textOf(html)).toContain(input.scenario.name);
      expect(unsafe(html)).toEqual([]);
    }
    const allIds = [
      ...cards
        .map(({ html }) => html)
        .join('')
        .matchAll(/\sid="([^"]*)"/g),
    ].map(([, id]) => id);
    expect(new Set(allIds).size).toBe(allIds.length);
    expect(trainerCards(input)).toEqual(cards);
  });

  it('hold no figure gone wrong', () => {
    for (const { html } of cards)
      expect(textOf(html)).not.toMatch(/NaN|undefined|null|Infinity|\[object/);
  });

  it('draw as many pieces as they tell', () => {
    const drawn = cards
      .filter(({ id }) => id.startsWith('card-rack-'))
      .flatMap(({ html }) => {
        const numbers = [...html.matchAll(/class="card-number"><b>(\d+)<\/b>/g)].map(([, pieces]) =>
          Number(pieces),
        );
        const told = [...html.matchAll(/<desc[^>]*>[^<]*?(\d+) pieces\./g)].map(([, pieces]) =>
          Number(pieces),
        );
        const shapes = html
          .split('<svg ')
          .map((svg) => svg.split('fill-opacity="0.28"').length - 1)
          .filter((count) => count > 0);
        return told.length === 0 ? [] : [{ numbers, told: [...told, ...shapes] }];
      });
    expect(drawn.length).toBeGreaterThan(0);
    // A basket of spoons stands in a rack undrawn.
    for (const { numbers, told } of drawn)
      for (const pieces of told) expect(numbers).toContain(pieces);
  });

  it('give the rush as the answer has it', () => {
    const formats = formatsFor(input.context);
    const { loads, tightest, stock } = input.answer;
    expect(textOf(cardNamed(cards, 'card-rack-1'))).toContain(
      `In a rush here about ${formats.count(Math.round(loads.racksADay))} racks are washed, on average ${formats.percent(loads.fill, 0).replace('\u00A0', ' ')} full.`,
    );
    expect(textOf(cardNamed(cards, 'card-clearing'))).toContain(
      `What runs low first: ${stock.find(({ ware }) => ware === tightest.ware)!.name}.`,
    );
    const breakage = textOf(cardNamed(cards, 'card-breakage'));
    for (const { name, pieces } of stock)
      expect(breakage).toMatch(new RegExp(`${name} \\S.*? below ${formats.count(pieces)} `));
  });

  it('say on the machine top what its layout says, or leave lines to fill in', () => {
    const top = textOf(cardNamed(cards, 'card-machine-top'));
    if (input.storage == null) {
      expect(top).toContain(english.cards.top.decideTitle);
      expect(cardNamed(cards, 'card-machine-top')).toContain('card-line');
      return;
    }
    for (const { name, onTop, inReserve, trigger } of input.storage.lines.filter(
      (line) => line.onTop > 0,
    ))
      expect(top).toContain(`${name} ${onTop} ${inReserve} ${trigger ?? english.cards.top.allUp}`);
  });

  it('carry every caution that applies, with whose rules outrank it, and room for the numbers of the house', () => {
    const safety = textOf(cardNamed(cards, 'card-safety'));
    for (const { title } of [
      english.cautions.scalds,
      english.cautions.chemicals,
      english.cautions.chipped,
      english.cautions.services,
      english.cautions.stacks,
      ...Object.values(english.cards.safety.extra),
    ])
      expect(safety).toContain(title);
    expect(safety.split(`${english.cautions.defers}:`).length - 1).toBe(
      (cardNamed(cards, 'card-safety').match(/<dt>/g) ?? []).length,
    );
    expect((cardNamed(cards, 'card-safety').match(/card-line/g) ?? []).length).toBe(
      1 + Object.keys(english.cards.safety.lines).length,
    );
  });
});

describe('a card', () => {
  const [first] = houses;

  it('tells what slipping rounds cost only if that was worked out', async () => {
    const input = await inputOf(first!.text);
    expect(cardNamed(trainerCards(input), 'card-clearing')).not.toContain(
      english.cards.clearing.slipTitle,
    );
    const slower = {
      everyMinutes: 20,
      insteadOfMinutes: 10,
      extraPieces: 12,
      extraCost: 34.5,
      ware: [
        { ware: 'saucer', extraPieces: 9 },
        { ware: 'teaspoon', extraPieces: 3 },
      ],
      extraTurnedAway: 0,
      days: 300,
    };
    const told = textOf(cardNamed(trainerCards({ ...input, slower }), 'card-clearing'));
    expect(told).toContain(
      'Rounds every 20 min instead of every 10 min would need 12 more pieces for the same service level: €34.50. (Worked out on 300 days.)',
    );
    expect(told).toContain('9 × Saucer, 3 × Teaspoon');
    expect(
      textOf(
        cardNamed(
          trainerCards({ ...input, slower: { ...slower, extraPieces: -2 } }),
          'card-clearing',
        ),
      ),
    ).toContain('need no more pieces');
  });

  it('tells the buyer at the reorder point where there is an order', async () => {
    const input = await inputOf(first!.text);
    const lines = input.answer.stock.map(({ ware }, index) => ({
      ware,
      reorderPoint: index === 0 ? null : 100 + index,
    }));
    const told = textOf(
      cardNamed(trainerCards({ ...input, order: { reviewDays: 28, lines } }), 'card-breakage'),
    );
    expect(told).toContain('below 101');
    expect(told).toContain(english.cards.breakage.last);
    expect(told).toContain('Count every 28 days');
  });

  it('measures in inches and pounds for those who do', async () => {
    const cards = trainerCards(await inputOf(first!.text, 'us'));
    const rack = textOf(cardNamed(cards, 'card-rack-1'));
    expect(rack).toMatch(/\d\sin\b/);
    expect(rack).toMatch(/\d\slb\b/);
    expect(rack).not.toMatch(/\d\s?(?:mm|kg)\b/);
  });

  it('says so where tables are cleared at once, and where a rack never goes part full', async () => {
    const text = stressedHouse(2, 1, 'atOnce').replace(
      'partLoadWait: 4 min, partLoadsEvery: 15 min',
      'partLoadWait: never',
    );
    const cards = trainerCards(await inputOf(text));
    expect(cardNamed(cards, 'card-clearing')).toContain(english.cards.clearing.atOnce);
    expect(cardNamed(cards, 'card-rack-1')).toContain(english.cards.rack.neverPart);
  });
});

describe('a house of hostile names', () => {
  it.each([
    [14, 1],
    [12, 4],
  ])('with %i kinds in %i families comes out escaped, and short', async (kinds, families) => {
    const cards = trainerCards(
      await inputOf(
        stressedHouse(
          kinds,
          families,
          undefined,
          'storage: { top: { width: 1200 mm, depth: 500 mm }, reserve: { width: 500 mm, depth: 300 mm, shelves: 1 } }',
        ),
      ),
    );
    for (const { html } of cards) {
      expect(unsafe(html)).toEqual([]);
      expect(html).not.toContain(TRICKS[0]);
      expect(html).not.toMatch(/[\u202A-\u202E\u2066-\u2069]/);
      expect(html).not.toMatch(/x{60}/);
    }
    expect(cards.filter(({ id }) => id.startsWith('card-breakage')).length).toBe(2);
    // Every kind of ware has its number on one rack card.
    const numbers = cards.flatMap(({ html }) => html.match(/class="card-number"/g) ?? []);
    expect(numbers.length).toBe(kinds + 1);
    for (const { html } of cards)
      expect((html.match(/class="card-number"/g) ?? []).length).toBeLessThanOrEqual(3);
  });

  it('is caught by the check above were it not escaped', () => {
    expect(unsafe(`<p>${TRICKS[0]}</p>`).length).toBeGreaterThan(0);
    expect(unsafe(`<p>${TRICKS[1]}</p>`).length).toBeGreaterThan(0);
    expect(unsafe('<p>a < b</p>')).toEqual(['<']);
  });
});

describe('the style', () => {
  it('has a page for each paper, and nothing that leaves a style element or fetches', () => {
    expect(cardStyle).toContain('@page card{size:A4');
    expect(cardStyle).toContain('@page card-letter{size:letter');
    expect(cardStyle).not.toMatch(/<|url\(|@import/);
  });
});
