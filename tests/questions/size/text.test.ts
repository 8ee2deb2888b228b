/** Numbers, tables and the answer in fixed-width text. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cleanText, columnsOf, shorten } from '../../../src/tell/clean-text.js';
import { digitsOf, formatsFor, textTable, wrapText } from '../../../src/tell/format.js';
import { ruleOfThumb } from '../../../src/questions/size/rules-of-thumb.js';
import { daysOf } from '../../../src/questions/size/lead.js';
import { sizeBlocks } from '../../../src/questions/size/tell.js';
import { english, listed } from '../../../src/tell/words.js';
import { writeText } from '../../../src/tell/write-text.js';
import { anyText } from '../../tell/any-text.js';
import { fixtureAnswer, fixtureContext, fixtureGivenStock } from '../../tell/fixture.js';

describe('clean text', () => {
  it('holds nothing that a terminal or a page would obey', () => {
    fc.assert(
      fc.property(anyText(80), (text) => {
        const clean = cleanText(text);
        expect(clean).not.toMatch(/[\p{Cc}\u200E\u200F\u202A-\u202E\u2066-\u2069]/u);
        expect(() => encodeURIComponent(clean)).not.toThrow();
        expect(cleanText(clean)).toBe(clean);
      }),
      { seed: 20 },
    );
  });

  it('drops escape sequences, turns of direction and line breaks', () => {
    expect(cleanText('a\u001B[31mb\r\nc\u202Ed\u0000')).toBe('a[31mb cd');
  });

  /** Unicode Standard Annex 11: ideographs are wide; a letter and its accent are one. */
  it('knows how many columns it takes', () => {
    expect(columnsOf('caf\u0065\u0301')).toBe(4);
    expect(columnsOf('茶碗')).toBe(4);
    expect(columnsOf('☕')).toBe(2);
  });

  it('is never longer than asked when shortened', () => {
    fc.assert(
      fc.property(anyText(), fc.integer({ min: 1, max: 40 }), (text, most) => {
        const short = shorten(cleanText(text), most);
        expect(columnsOf(short)).toBeLessThanOrEqual(most);
        if (columnsOf(cleanText(text)) <= most) expect(short).toBe(cleanText(text));
      }),
      { seed: 20 },
    );
    expect(shorten('x'.repeat(10_000), 5)).toBe('xxxx…');
  });
});

describe('formats', () => {
  const irish = formatsFor({ locale: 'en-IE', currency: 'EUR', openingMinute: 420 });
  /** Unicode CLDR: German writes 1.234,50 €. */
  const german = formatsFor({ locale: 'de-DE', currency: 'EUR', openingMinute: null });

  it('write money and numbers as the place does', () => {
    expect(irish.money(1234.5)).toBe('€1,234.50');
    expect(german.money(1234.5)).toBe('1.234,50\u00A0€');
    expect(
      formatsFor({ locale: 'ja-JP', currency: 'JPY', openingMinute: null }).money(1234),
    ).toMatch(/^.1,234$/);
    expect(german.percent(0.9538)).toBe('95,4\u00A0%');
  });

  it('tell minutes from opening as the time of day, past midnight too', () => {
    expect(irish.clock(0)).toBe('07:00');
    expect(irish.clock(95.4)).toBe('08:35');
    expect(formatsFor({ locale: 'en-IE', currency: 'EUR', openingMinute: 23 * 60 }).clock(90)).toBe(
      '00:30',
    );
    expect(formatsFor({ locale: 'en-US', currency: 'USD', openingMinute: 780 }).clock(5)).toBe(
      '1:05\u00A0PM',
    );
    expect(german.clock(95)).toBe('1:35\u00A0h');
  });

  it('print a minus, and none before nothing', () => {
    expect(irish.percent(-0.009)).toBe('−0.9\u00A0%');
    expect(irish.count(-12)).toBe('−12');
    expect(irish.money(-3.5)).toBe('−€3.50');
    expect(irish.decimal(-0.01)).toBe('0.0');
  });

  it('never call nearly all all, or next to nothing nothing', () => {
    expect(irish.percent(0.99996)).toBe('99.9\u00A0%');
    expect(irish.percent(0.00004)).toBe('0.1\u00A0%');
    expect(irish.percent(1)).toBe('100.0\u00A0%');
    expect(irish.percent(0)).toBe('0.0\u00A0%');
  });

  it('fall back where a locale or currency is none', () => {
    expect(
      formatsFor({ locale: 'no such place', currency: 'EUR', openingMinute: null }).money(2),
    ).toBe('€2.00');
    expect(formatsFor({ locale: 'en-IE', currency: '<b>', openingMinute: null }).money(2)).toBe(
      '2.00',
    );
  });

  it('give a level as many digits as it needs', () => {
    expect([0.95, 0.975, 0.9995].map(digitsOf)).toEqual([0, 1, 2]);
  });
});

describe('tables', () => {
  it('line up: every row has the same width, at most the width given', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(anyText(), fc.integer(), fc.double({ noNaN: true, min: -1e6, max: 1e6 })),
          { minLength: 1, maxLength: 12 },
        ),
        fc.integer({ min: 60, max: 100 }),
        (rows, width) => {
          const lines = textTable(
            [{ title: 'Ware' }, { title: 'Two\nlines', right: true }, { title: 'x', right: true }],
            rows.map(([a, b, c]) => [cleanText(a), String(b), c.toFixed(2)]),
            width,
          );
          const widths = new Set(lines.map(columnsOf));
          expect(widths.size).toBe(1);
          expect([...widths][0]).toBeLessThanOrEqual(width);
        },
      ),
      { seed: 20 },
    );
  });

  it('text wraps within its width and keeps its words', () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^\S{1,20}$/), { minLength: 1, maxLength: 40 }),
        (parts) => {
          const text = cleanText(parts.join(' '));
          const lines = wrapText(text, 40, '  ');
          for (const line of lines) expect(columnsOf(line)).toBeLessThanOrEqual(40);
          expect(lines.map((line) => line.trim()).join(' ')).toBe(text);
        },
      ),
      { seed: 20 },
    );
  });
});

describe('rules of thumb (common practice, no source)', () => {
  it('give 3.0 cups and 1.5 saucers a seat, 1.2 to 1.5 spoons a saucer', () => {
    expect(ruleOfThumb('cup', 44, 0)).toEqual([132, 132]);
    expect(ruleOfThumb('saucer', 44, 0)).toEqual([66, 66]);
    expect(ruleOfThumb('spoon', null, 100)).toEqual([120, 150]);
  });

  it('are silent where they know nothing', () => {
    expect(ruleOfThumb('glass', 44, 0)).toBeNull();
    expect(ruleOfThumb('cup', null, 0)).toBeNull();
    expect(ruleOfThumb('spoon', 44, 0)).toBeNull();
  });
});

describe('the answer as text', () => {
  const textOf = (answer = fixtureAnswer(), width = 100, all = true): string =>
    writeText(sizeBlocks(answer, fixtureContext()), { width, all });
  const flat = (text: string): string => text.replace(/\s+/g, ' ');
  const text = textOf();
  const paragraph = (shown: string, at: number): string => flat(shown.split('\n\n')[at]!);

  it('begins with what to have clean, for how much, and on how many mornings that is enough', () => {
    expect(paragraph(text, 0)).toBe(
      'Have 62 medium cups, 34 large cups, 21 tumblers, 92 saucers and 95 teaspoons clean when you open (€1,141.80). On about 95 of 100 mornings nothing will run out.',
    );
    expect(paragraph(text, 1)).toBe(
      'Measured on 4,000 simulated days that played no part in the choice: nothing ran out on 95.4 % of them (95 % interval: 94.7 % to 96.0 %). This meets the 95 % you asked for within the margin of error: the true share may be up to 0.3 percentage points below it or up to 1.0 above it.',
    );
  });

  it('fits any terminal of 40 columns or more', () => {
    for (const answer of [fixtureAnswer(), fixtureGivenStock()])
      for (const width of [40, 60, 80, 100, 140]) {
        const shown = textOf(answer, width);
        for (const line of shown.split('\n')) expect(columnsOf(line)).toBeLessThanOrEqual(width);
        expect(shown.endsWith('\n')).toBe(true);
        expect(shown).not.toMatch(/undefined|NaN|null|\u00A0/);
      }
  });

  it('holds the cups of all kinds against the rule together, and a lone item by itself', () => {
    expect(text).toMatch(/^all cups +96 +2\.2 +132 *$/m);
    expect(text).toMatch(/^Medium cup +62 +1\.4 +€5\.50 +€341\.00 +58 +56 to 60$/m);
    expect(text).toMatch(/^Saucer +92 +2\.1 +66 +€.* 88 /m);
    expect(text).toMatch(/^Teaspoon +95 +2\.2 +110 to 138 +€.* +90 +88 or more$/m);
  });

  it('keeps what it costs and how many where a terminal is narrow', () => {
    const narrow = textOf(fixtureAnswer(), 44);
    for (const { pieces } of fixtureAnswer().stock) expect(narrow).toContain(String(pieces));
    expect(narrow).toContain('€1,141.80');
  });

  it('says who cannot keep up, from when, and how many would', () => {
    expect(flat(text)).toContain(
      'The people making drinks cannot keep up: in the busiest hour they face 112 % of the work they can do, and they fall behind from 08:15. More cups only delay the problem; 3 people making drinks would keep up.',
    );
  });

  it('shows warnings with their path at once, and the details on request', () => {
    const short = textOf(fixtureAnswer(), 100, false);
    expect(short).toMatch(/\(washing\.machines\)/);
    expect(short).not.toContain('Dishwashers');
    expect(short).toMatch(/With --all: /);
    expect(text).toMatch(/^Dishwashers +61 %$/m);
    expect(flat(text)).toContain(
      'Chosen on 2,000 simulated days and tested on 4,000 others; seed 1.',
    );
  });

  it('names no tightest moment where no piece leaves the shelf, nor times off it', () => {
    const answer = fixtureAnswer();
    const { minutes, tightest } = answer;
    const none = textOf({
      ...answer,
      minutes: { ...minutes, loop: minutes.loop.map((one) => ({ ...one, minutes: 0 })) },
      tightest: {
        ...tightest,
        pieces: tightest.pieces.map((one) => ({ ...one, counts: one.counts.map(() => 0) })),
      },
    });
    expect(none).toContain('No piece leaves the shelf.');
    for (const words of ['The tightest moment is', 'Where the pieces are', 'Average time off']) {
      expect(text).toContain(words);
      expect(none).not.toContain(words);
    }
  });

  it('tells a level that is missed, met and beaten apart', () => {
    const measured = (level: number): string => paragraph(textOf({ ...fixtureAnswer(), level }), 1);
    expect(measured(0.99)).toContain('less than the 99 % you asked for');
    expect(measured(0.95)).toContain('meets the 95 % you asked for within the margin of error');
    expect(measured(0.9)).toContain('better than the 90 % you asked for');
  });

  it('promises a level outright only where it was assured', () => {
    const certified = { level: 0.96, low: 0.952, high: 0.967, confidence: 0.95 };
    const sure = (held: boolean, tries: number): string =>
      flat(
        textOf({
          ...fixtureAnswer(),
          certified,
          assured: { confidence: 0.975, tries, held },
        }),
      );
    expect(sure(true, 1)).toContain(
      'On at least 95 % of mornings nothing will run out: that is 97.5 % sure.',
    );
    expect(sure(true, 1)).toContain('so the true share is 95.2 % or more (97.5 % sure).');
    expect(sure(true, 1)).not.toContain('We tried');
    expect(sure(true, 2)).toContain('We tried 2 stocks until one passed');
    expect(sure(false, 4)).not.toContain('On at least');
    expect(sure(false, 4)).toContain('The 95 % you asked for could not be assured.');
  });

  it('calls nearly all neither all nor 100 of 100', () => {
    const often = (level: number): string =>
      paragraph(
        textOf({ ...fixtureAnswer(), certified: { level, low: 0, high: 1, confidence: 0.95 } }),
        0,
      );
    expect(often(0.999)).toContain('about 999 of 1,000 mornings');
    expect(often(0.9999)).toContain('more than 999 of 1,000 mornings');
    expect(often(1)).toContain('On all mornings tested, nothing ran out.');
    expect(often(0.001)).toContain('fewer than 1 of 100 mornings');
    expect(often(0)).toContain('On all mornings tested, something ran out.');
  });

  it.each([
    [7, 11, 'mornings'],
    [7, 17, 'days'],
    [13, 17, 'afternoons'],
    [17, 23, 'evenings'],
    [11, 15, 'days'],
  ])('calls opening hours of %i to %i %s', (from, until, days) => {
    const context = { ...fixtureContext(), openingMinute: from * 60 };
    expect(daysOf({ ...context, openMinutes: (until - from) * 60 })).toBe(days);
    expect(daysOf({ ...context, openingMinute: null })).toBe('rushes');
  });

  it('says nothing of fresh days where there were none', () => {
    const listedDays = textOf({
      ...fixtureAnswer(),
      certified: null,
      days: { chosenOn: 12, certifiedOn: 0 },
    });
    expect(flat(listedDays)).toContain(
      'On at least 95 % of the 12 days in your file, nothing runs out.',
    );
    expect(listedDays).not.toContain('played no part');
    const one = textOf({
      ...fixtureAnswer(),
      certified: null,
      days: { chosenOn: 1, certifiedOn: 0 },
    });
    expect(flat(one)).toContain('On the one day in your file, nothing runs out.');
  });

  it('with a given stock tells level, fill rate, shortages and the first of them', () => {
    const given = textOf(fixtureGivenStock());
    expect(given).toMatch(/^You have 62 medium cups/);
    expect(given).toContain('73.1 % (71.1 % to 75.0 %)');
    expect(given).toMatch(/Drinks short of Medium cup +1\.42 a day/);
    expect(given).toContain('half of them by 08:36, the earliest at 08:01');
  });

  it('of a stock of which some items were left out does not say that you have them', () => {
    const warning = { code: 'ware-taken-as-plentiful', message: 'none for Mug', path: '' };
    const given = flat(textOf({ ...fixtureGivenStock(), warnings: [warning] }));
    expect(given).not.toContain('You have 62');
    expect(given).toMatch(
      /^You gave no number for some items, so we took as many of them as the busiest day needs: 62 medium cups.* in all\. On /,
    );
  });

  it('does not pass off usual prices as those of the file, and points to the quotes where there are some', () => {
    const said = (paths: readonly string[], origin: 'file' | 'default' = 'default'): string => {
      const inputs = paths.map((path) => ({
        path,
        value: '4 EUR',
        basis: 'practice' as const,
        range: null,
        source: '',
        origin: path.startsWith('supply') ? ('file' as const) : origin,
      }));
      return flat(
        writeText(sizeBlocks(fixtureAnswer(), { ...fixtureContext(), inputs }), { width: 80 }),
      );
    };
    const all = fixtureAnswer().stock.map(({ ware }) => `ware.${ware}.price`);
    expect(said(all, 'file')).not.toContain('usually costs');
    expect(said(['ware.saucer.price', 'ware.tumbler.price'])).toContain(
      'The file gives no price for Tumbler and Saucer: what is printed is what such ware usually costs (assumed).',
    );
    expect(said(all)).toContain('The file gives no prices of ware');
    expect(said(all)).not.toContain('suppliers');
    expect(said([...all, 'supply.suppliers.quay.quotes.saucer.price'])).toContain(
      'The order sheet works with the prices of your suppliers.',
    );
  });

  it('keeps its form whatever things are called', () => {
    fc.assert(
      fc.property(anyText(200), (name) => {
        const shown = writeText(
          sizeBlocks(
            fixtureAnswer(() => name, name),
            fixtureContext(() => name),
          ),
          { width: 80, all: true },
        );
        for (const line of shown.split('\n')) expect(columnsOf(line)).toBeLessThanOrEqual(80);
        expect(shown).not.toMatch(/(?!\n)\p{Cc}|[\u202A-\u202E\u2066-\u2069]/u);
      }),
      { seed: 20, numRuns: 40 },
    );
  });

  it('cuts names of ware that fill lines', () => {
    const blocks = sizeBlocks(
      fixtureAnswer(() => 'cup '.repeat(50)),
      fixtureContext(),
    );
    expect(JSON.stringify(blocks)).toContain('cup cup');
    expect(JSON.stringify(blocks)).not.toContain('cup '.repeat(11));
  });

  it('counts pieces where there are too many items to name', () => {
    const { stock } = fixtureAnswer();
    const many = textOf({
      ...fixtureAnswer(),
      stock: [...stock, ...stock.map((line) => ({ ...line, ware: `${line.ware}-2` }))],
    });
    expect(many).toMatch(/^Have 608 pieces of 10 kinds clean when you open/);
  });
});

describe('words', () => {
  it('name pieces in the plural where it is known, and leave other names alone', () => {
    expect(english.answer.pieces('2', 'Water glass', false)).toBe('2 water glasses');
    expect(english.answer.pieces('1', 'Saucer', true)).toBe('1 saucer');
    expect(english.answer.pieces('2', 'Tern cup', false)).toBe('2 Tern cups');
    expect(english.answer.pieces('2', 'Gibraltar', false)).toBe('2 × Gibraltar');
    expect(english.answer.pieces('2', 'constructor', false)).toBe('2 × constructor');
  });

  it('list with commas and and', () => {
    expect(listed(['a', 'b', 'c'])).toBe('a, b and c');
  });
});

describe('where nothing is needed', () => {
  const answer = fixtureAnswer();
  const stock = answer.stock.map((line) => ({ ...line, pieces: 0 }));
  it.each([
    [0, 0, 'no guest came on any of the days tested'],
    [0, 9, 'every guest was turned away'],
    [120, 0, 'every drink went out in a paper cup'],
    [120, 9, 'some guests got no seat, and every drink that was served went out in a paper cup'],
  ])('%i served, %i turned away: the reason is true', (served, turnedAway, says) => {
    const guests = { ...answer.guests, served, turnedAway };
    const said = writeText(sizeBlocks({ ...answer, stock, guests }, fixtureContext()), {
      width: 300,
      all: false,
    });
    expect(said.split('\n')[0]).toContain(`You need no cups, glasses or spoons: ${says}.`);
  });
});
