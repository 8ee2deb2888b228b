import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fold, heading, list, paragraphs, table, type Block } from '../../src/tell/block.js';
import { columnsOf } from '../../src/tell/clean-text.js';
import { formatsFor } from '../../src/tell/format.js';
import { writeHtml } from '../../src/tell/write-html.js';
import { writeText } from '../../src/tell/write-text.js';

const word = fc.stringMatching(/^[a-zé€0-9]{1,14}$/);
const sentence = fc.array(word, { minLength: 1, maxLength: 14 }).map((words) => words.join(' '));
const aTable = fc.integer({ min: 1, max: 9 }).chain((columns) =>
  fc.record({
    caption: sentence,
    columns: fc.array(
      fc.record({
        title: sentence,
        as: fc.constantFrom('words' as const, 'figures' as const),
        spare: fc.boolean(),
      }),
      { minLength: columns, maxLength: columns },
    ),
    rows: fc.array(fc.array(sentence, { minLength: columns, maxLength: columns }), {
      minLength: 1,
      maxLength: 4,
    }),
  }),
);
const blocks: fc.Arbitrary<Block[]> = fc.array(
  fc.oneof(
    sentence.map((text) => heading(text)),
    fc.array(sentence).map((texts) => paragraphs(texts)),
    fc.array(sentence).map((items) => list(items, 'Title')),
    aTable.map(table),
    aTable.map((one) => fold('More', [table(one)])),
  ),
  { maxLength: 5 },
);
const settings = { seed: 20261128, numRuns: 150 };
const html = (some: readonly Block[]): Promise<string> =>
  writeHtml(some, {
    draw: () => Promise.resolve([]),
    formats: formatsFor({ locale: 'en-IE', currency: 'EUR', openingMinute: null }),
  });

describe('blocks as text', () => {
  it('are never wider than the terminal', () => {
    fc.assert(
      fc.property(blocks, fc.integer({ min: 20, max: 160 }), fc.boolean(), (some, width, all) => {
        for (const line of writeText(some, { width, all }).split('\n'))
          expect(columnsOf(line)).toBeLessThanOrEqual(width);
      }),
      settings,
    );
  });

  it('keep every word of a table whose columns may not be left out', () => {
    fc.assert(
      fc.property(aTable, fc.integer({ min: 30, max: 160 }), (one, width) => {
        const kept = {
          ...one,
          columns: one.columns.map((column) => ({ ...column, spare: false })),
        };
        const text = writeText([table(kept)], { width }).split(/\s+/);
        const tally = (words: readonly string[]): Map<string, number> => {
          const counts = new Map<string, number>();
          for (const each of words) counts.set(each, (counts.get(each) ?? 0) + 1);
          return counts;
        };
        const shown = tally(text);
        for (const [each, times] of tally(kept.rows.flat().flatMap((cell) => cell.split(' '))))
          expect(shown.get(each) ?? 0).toBeGreaterThanOrEqual(times);
      }),
      settings,
    );
  });

  it('names what is left out for want of room, and what `--all` adds', () => {
    const wide = table({
      caption: '',
      columns: [
        { title: 'Ware', as: 'words' },
        { title: 'Pieces', as: 'figures' },
        { title: 'Remark', as: 'words', spare: true },
      ],
      rows: [['Cup', '1,234,567,890', 'x']],
    });
    expect(writeText([wide], { width: 34 })).not.toContain('Left out');
    expect(writeText([wide], { width: 24 })).toBe(
      'Ware         Pieces\n-------------------\nCup   1,234,567,890\nLeft out at this width:\nremark.\n',
    );
    expect(writeText([fold('washing', [wide])])).toBe('With --all: washing.\n');
    // A fold of pictures alone has nothing for a terminal, not even its title.
    const pictures = fold('pictures', [{ kind: 'picture', pictures: [] }]);
    expect(writeText([pictures])).toBe('');
    expect(writeText([pictures], { all: true })).toBe('');
  });

  it('shows a row as a list where nothing else fits', () => {
    const text = writeText(
      [
        table({
          caption: '',
          columns: ['Ware', 'Needed', 'Spare', 'Ordered'].map((title) => ({
            title,
            as: 'figures' as const,
          })),
          rows: [['Cup', '100,000', '200,000', '300,000']],
        }),
      ],
      { width: 20 },
    );
    expect(text).toBe('Cup\n  Needed: 100,000\n  Spare: 200,000\n  Ordered: 300,000\n');
  });
});

describe('blocks as HTML', () => {
  it('hold every text of the blocks, escaped', async () => {
    const out = await html([
      heading('A <b>'),
      paragraphs(['x & y'], 'small'),
      list(['one', 'two <i>'], 'T'),
      fold('More', [paragraphs(['deep'])]),
    ]);
    expect(out).toContain('<h2>A &lt;b&gt;</h2>');
    expect(out).toContain('<p class="small">x &amp; y</p>');
    expect(out).toContain('<li>two &lt;i&gt;</li>');
    expect(out).toMatch(/<details[^>]*><summary>More<\/summary>\n<p>deep<\/p>/);
  });

  it('leave out what is meant for text alone, and the other way round', async () => {
    const some: Block[] = [
      { kind: 'paragraphs', texts: ['terminal'], only: 'text' },
      { kind: 'paragraphs', texts: ['letter'], only: 'html' },
    ];
    expect(await html(some)).toBe('<p>letter</p>');
    expect(writeText(some)).toBe('terminal\n');
  });
});
