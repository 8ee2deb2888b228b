/** Numbers, tables and the answer in fixed-width text. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { digitsOf } from '../../../src/questions/size/facts.js';
import { cleanText, columnsOf, shorten } from '../../../src/tell/clean-text.js';
import { formatsFor, textTable, wrapText } from '../../../src/tell/format.js';
import { ruleOfThumb } from '../../../src/questions/size/rules-of-thumb.js';
import { answerText } from '../../../src/questions/size/text.js';
import { english, listed } from '../../../src/tell/words.js';
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
      '01:05\u00A0PM',
    );
    expect(german.clock(95)).toBe('1:35\u00A0h');
  });

  it('never call nearly all all, or next to nothing nothing', () => {
    expect(irish.percent(0.99996)).toBe('99.9%');
    expect(irish.percent(0.00004)).toBe('0.1%');
    expect(irish.percent(1)).toBe('100.0%');
    expect(irish.percent(0)).toBe('0.0%');
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
  const text = answerText(fixtureAnswer(), fixtureContext());

  it('begins with what to buy, for how much, and how sure that is', () => {
    const first = text.split('\n\n')[0]!.replaceAll('\n', ' ');
    expect(first).toContain(
      '62 medium cups, 34 large cups, 21 tumblers, 92 saucers and 95 teaspoons',
    );
    expect(first).toContain('€1,141.80');
    expect(first).toContain('95.4% of rushes');
    expect(first).toContain('94.7% to 96.0%');
  });

  it('has no line over 100 columns, and tables whose lines are equally long', () => {
    for (const shown of [text, answerText(fixtureGivenStock(), fixtureContext())]) {
      for (const line of shown.split('\n')) expect(columnsOf(line)).toBeLessThanOrEqual(100);
      const table = shown.split('\n\n')[1]!.split('\n');
      expect(new Set(table.map(columnsOf)).size).toBe(1);
      expect(shown.endsWith('\n')).toBe(true);
      expect(shown).not.toMatch(/undefined|NaN|null/);
    }
  });

  it('holds the cups of all kinds against the rule together, and a lone ware by itself', () => {
    expect(text).toMatch(/^all cups +96 +2\.2 +132 *$/m);
    expect(text).not.toContain('\u00A0');
    expect(text).toMatch(/^Medium cup +62 +1\.4 +58 +56 to 60 +€5\.50 +€341\.00$/m);
    expect(text).toMatch(/^Saucer +92 +2\.1 +66 +88 /m);
    expect(text).toMatch(/^Teaspoon +95 +2\.2 +110 to 138 +90 +88 or more /m);
  });

  it('says who is overloaded, from when, and what would do', () => {
    expect(text).toMatch(
      /the people making drinks get 112% of what they can\s+do, and fall behind from 08:15\. More ware only buys time; 3 would do/,
    );
  });

  it('shows warnings with their path, and the days', () => {
    expect(text).toMatch(/\(washing\.machines\)/);
    expect(text).toContain('Chosen on 2,000 simulated days, tried on 4,000 fresh ones; seed 1.');
  });

  it('tells a missed, an unsure and a kept promise apart', () => {
    const told = (level: number): string =>
      answerText({ ...fixtureAnswer(), level }, fixtureContext())
        .split('\n\n')[0]!
        .replaceAll('\n', ' ');
    expect(told(0.99)).toContain('misses the 99% asked for');
    expect(told(0.95)).toContain('as good as the 95% asked for');
    expect(told(0.9)).toContain('better than the 90% asked for');
  });

  it('says nothing of fresh days where there were none', () => {
    const listedDays = answerText(
      { ...fixtureAnswer(), certified: null, days: { chosenOn: 12, certifiedOn: 0 } },
      fixtureContext(),
    );
    expect(listedDays).toContain('12 listed days');
    expect(listedDays).not.toContain('tried on fresh days');
  });

  it('with a given stock tells level, fill rate, shortages and the first of them', () => {
    const given = answerText(fixtureGivenStock(), fixtureContext());
    expect(given).toMatch(/^With 62 medium cups/);
    expect(given).toContain('73.1% (71.1% to 75.0%)');
    expect(given).toMatch(/Drinks short of Medium cup +1\.42 a day/);
    expect(given).toContain('half before 08:36, the earliest at 08:01');
  });

  it('keeps its form whatever things are called', () => {
    fc.assert(
      fc.property(anyText(200), (name) => {
        const shown = answerText(
          fixtureAnswer(() => name, name),
          fixtureContext(() => name),
        );
        for (const line of shown.split('\n')) expect(columnsOf(line)).toBeLessThanOrEqual(100);
        expect(shown).not.toMatch(/(?!\n)\p{Cc}|[\u202A-\u202E\u2066-\u2069]/u);
      }),
      { seed: 20, numRuns: 40 },
    );
  });

  it('counts pieces where there are too many wares to name', () => {
    const { stock } = fixtureAnswer();
    const many = answerText(
      {
        ...fixtureAnswer(),
        stock: [...stock, ...stock.map((line) => ({ ...line, ware: `${line.ware}-2` }))],
      },
      fixtureContext(),
    );
    expect(many).toMatch(/^Buy 608 pieces of 10 kinds of ware/);
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
