/** The guide as a page to print: one side of A4 or US Letter, black on white, with its typefaces in it. */
import type { ReportContext } from '../../tell/context.js';
import { shownIn } from '../../tell/block.js';
import { escapeHtml } from '../../tell/escape-html.js';
import { formatsFor } from '../../tell/format.js';
import { shortName } from '../../tell/section-parts.js';
import { FIGURE_FACE } from '../../tell/typefaces.js';
import { english } from '../../tell/words.js';
import { writeHtml } from '../../tell/write-html.js';
import type { Guide } from './answer.js';
import { columnShares, SET, typeSizeFor } from './fit.js';
import { guideBlocks } from './tell.js';
import { say } from './words.js';

/** @param typefaces style sheet that carries them; '' sets the page in what the machine has, which may then not fit */
export async function guidePage(
  guide: Guide,
  context: ReportContext,
  typefaces: string,
): Promise<string> {
  const blocks = guideBlocks(guide, context, { alone: true });
  const body = await writeHtml(blocks, {
    draw: () => Promise.resolve([]),
    formats: formatsFor(context),
  });
  const widths = shownIn('html', blocks)
    .flatMap((block) => (block.kind === 'table' ? [columnShares(block.columns)] : []))
    .map((shares, at) => columnRules(at, shares))
    .join('\n');
  return `<!doctype html>
<html lang="${english.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeHtml(`${say.heading}: ${shortName(guide.scenario)}`)}</title>
<style>${typefaces}${style(typeSizeFor(blocks))}${widths}</style>
</head>
<body>
<main>
${body}
</main>
</body>
</html>
`;
}

/** Widths of the columns of the page's table number `at`, from 0. */
const columnRules = (at: number, shares: readonly number[]): string =>
  shares
    .map(
      (share, column) =>
        `.scroll:nth-of-type(${at + 1}) th:nth-child(${column + 1}){width:${(100 * share).toFixed(2)}%}`,
    )
    .join('');

/** Lengths are ems of the type, so that all of it grows and shrinks together; `fit.ts` adds them up. */
const style = (size: number): string => `
*{box-sizing:border-box}
@page{margin:10mm}
html{background:#fff;color:#111}
body{margin:0 auto;padding:10mm;max-width:210mm;font:${size.toFixed(1)}pt/${SET.line} ${FIGURE_FACE};overflow-wrap:anywhere}
h2{font-size:${SET.heading}em;line-height:${SET.line};margin:0 0 ${SET.after / SET.heading}em}
p{margin:0 0 ${SET.after}em}
.lead{font-size:${SET.lead}em}
.small{font-size:${SET.small}em}
.alarm{font-weight:600}
h3,caption{font-size:${SET.caption}em;line-height:${SET.line};font-weight:600;text-align:left;margin:0;padding:0}
.scroll,ul{margin:0 0 ${1.5 * SET.after}em}
ul{font-size:${SET.small}em;columns:2;column-gap:${SET.columnGap}em;padding:0}
li{break-inside:avoid-column;list-style:none;padding-left:${SET.indent}em;text-indent:-${SET.indent}em}
li::before{content:"–";display:inline-block;width:${SET.indent}em;text-indent:0}
table{width:100%;table-layout:fixed;border-collapse:collapse;font-variant-numeric:tabular-nums}
th,td{text-align:right;vertical-align:top;font-weight:400;padding:${SET.rowPad}em ${SET.cellPad}em}
th:first-child,.word{text-align:left}
thead th{font-weight:600;vertical-align:bottom;border-bottom:.5pt solid #111}
tbody tr+tr>*{border-top:.5pt solid #ccc}
@media screen{html{background:#eee}body{background:#fff;min-height:279mm}.scroll{overflow-x:auto}}
@media print{body{padding:0;max-width:none}tr,li,h3{break-inside:avoid}}
`;
