/** Blocks as HTML for the letter and for print. All text comes out escaped, in one line and of bounded length. */
import { shownIn, type Block } from './block.js';
import type { Chart } from './charts/chart-table.js';
import type { Formats } from './format.js';
import type { ReportChart } from './html-picture.js';
import * as part from './section-parts.js';

/** Draws charts; the letter and the command each have their own way. */
export type Draw = (charts: readonly Chart[]) => Promise<ReportChart[]>;

/** @throws Error if a picture holds anything but shapes and text */
export async function writeHtml(
  blocks: readonly Block[],
  { draw, formats }: { readonly draw: Draw; readonly formats: Formats },
): Promise<string> {
  const html = async (block: Block): Promise<string> => {
    switch (block.kind) {
      case 'heading':
        return block.level === 1 ? part.heading(block.text) : part.subheading(block.text);
      case 'paragraphs':
        return block.texts.map((text) => part.paragraph(text, block.tone)).join('\n');
      case 'list':
        return block.title === undefined
          ? part.list(block.items)
          : part.listUnder(block.title, block.items);
      case 'table':
        return part.table({
          caption: block.caption,
          head: block.columns.map(({ title }) => title),
          rows: block.rows,
          words: block.columns.flatMap(({ as }, at) => (as === 'words' ? [at] : [])),
          ...(block.totals === undefined ? {} : { totals: block.totals }),
        });
      case 'picture': {
        const pictures = await drawnInOrder(block.pictures, draw);
        return (block.together === true ? part.drawingList : part.pictureList)(pictures, formats);
      }
      case 'fold':
        return part.folded(block.title, await all(block.blocks));
    }
  };
  const all = async (some: readonly Block[]): Promise<string> => {
    const parts: string[] = [];
    for (const block of shownIn('html', some)) parts.push(await html(block));
    return part.joined(parts);
  };
  return all(blocks);
}

async function drawnInOrder(
  pictures: readonly (Chart | ReportChart)[],
  draw: Draw,
): Promise<ReportChart[]> {
  const charts = pictures.filter((one): one is Chart => 'spec' in one);
  const drawn = charts.length === 0 ? [] : await draw(charts);
  let next = 0;
  return pictures.map((one) => ('spec' in one ? drawn[next++]! : one));
}
