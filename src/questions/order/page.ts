/** The order as a page to print: the same blocks as the letter's, and a reorder card for each ware. */
import { reorderCard } from '../../ordering/reorder-card.js';
import type { OrderSheet } from '../../ordering/order-sheet.js';
import { heading, table, type Block } from '../../tell/block.js';
import type { ReportContext } from '../../tell/context.js';
import { escapeHtml } from '../../tell/escape-html.js';
import { formatsFor } from '../../tell/format.js';
import { letterStyle } from '../../tell/html-style.js';
import { sectionStyle } from '../../tell/section-style.js';
import { shortName } from '../../tell/section-parts.js';
import { english } from '../../tell/words.js';
import { writeHtml, type Draw } from '../../tell/write-html.js';
import type { OrderStudy } from './study.js';
import { orderBlocks } from './tell.js';
import { say } from './words.js';

/** @throws Error if a picture cannot be drawn */
export async function orderPage(
  study: OrderStudy,
  context: ReportContext,
  draw: Draw,
): Promise<string> {
  const { sheet } = study;
  const body = await writeHtml([...orderBlocks(study, context), ...cardBlocks(sheet)], {
    draw,
    formats: formatsFor(context),
  });
  return `<!doctype html>
<html lang="${english.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeHtml(say.heading(shortName(sheet.title), sheet.date))}</title>
<style>${letterStyle(sheet.title)}${sectionStyle()}</style>
</head>
<body>
<main>
<h1>${escapeHtml(shortName(sheet.title))}</h1>
${body}
${context.made === undefined ? '' : `<p class="small">${escapeHtml(context.made)}</p>\n`}</main>
</body>
</html>
`;
}

/** A table for each card, so that it stays in one piece in print. */
const cardBlocks = (sheet: OrderSheet): Block[] => [
  heading(say.cards, 2),
  ...sheet.lines.map((line) => {
    const { title, rule, rows } = reorderCard(line, sheet);
    return table({
      caption: title,
      columns: [
        { title: say.cardRule, as: 'words' },
        { title: rule, as: 'words' },
      ],
      rows: rows.map(({ label, text }) => [label, text]),
    });
  }),
];
