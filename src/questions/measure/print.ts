/** The sheet to print and fill in by hand, landscape on A4 or US Letter, black on white. */
import { BEFORE, AFTER, type PartId } from '../../measuring/sheet.js';
import { escapeHtml } from '../../tell/escape-html.js';
import { shortName } from '../../tell/section-parts.js';
import { FIGURE_FACE } from '../../tell/typefaces.js';
import { english } from '../../tell/words.js';
import type { SheetFacts } from './facts.js';
import { rowsOf } from './template.js';
import { partWords, say } from './words.js';

/** @param typefaces style sheet that carries them; '' sets the page in what the machine has */
export function sheetPage(facts: SheetFacts, typefaces: string): string {
  const title = `${say.sheet}: ${escapeHtml(shortName(facts.name))}`;
  return `<!doctype html>
<html lang="${english.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>${typefaces}${style(facts)}</style>
</head>
<body>
<main>
<h1>${title}</h1>
<p class="line"><span>${say.date}:</span><span>${say.by}:</span></p>
${facts.parts.map((part) => section(part, facts)).join('\n')}
</main>
</body>
</html>
`;
}

function section(part: PartId, facts: SheetFacts): string {
  const { title, how } = partWords[part];
  return `<section class="${part}">
<h2>${title}</h2>
<p>${how}</p>
<table>
<thead>${headings(part, facts)}</thead>
<tbody>
${rowsOf(part, facts)
  .map((first) => row(part, first, facts))
  .join('\n')}
</tbody>
</table>
</section>`;
}

/** Counts by party size stand under one head. */
function headings(part: PartId, { sizes }: SheetFacts): string {
  const { columns } = partWords[part];
  const th = (text: string, more = ''): string => `<th scope="col"${more}>${text}</th>`;
  if (part !== 'tally') return `<tr>${columns.map((text) => th(text)).join('')}</tr>`;
  const [from, came, went, away, ...rest] = columns as readonly [
    string,
    string,
    string,
    string,
    ...string[],
  ];
  const two = ' rowspan="2"';
  const numbers = Array.from(
    { length: sizes },
    (_, at) => `${at + 1}${at + 1 === sizes ? '+' : ''}`,
  );
  return `<tr>${th(from, two)}${[came, went, away].map((text) => `<th colspan="${sizes}" scope="colgroup">${text}</th>`).join('')}${rest.map((text) => th(text, two)).join('')}</tr>
<tr>${[0, 1, 2].map(() => numbers.map((text) => th(text)).join('')).join('')}</tr>`;
}

function row(part: PartId, first: string, { sizes, ware, machines }: SheetFacts): string {
  const { columns } = partWords[part];
  const cells = part === 'tally' ? 3 * sizes + columns.length - 4 : columns.length - 1;
  const shown =
    part === 'ware'
      ? escapeHtml(ware.find(({ id }) => id === first)!.name)
      : first === BEFORE
        ? say.before
        : first === AFTER
          ? say.after
          : part === 'loads' && machines > 1
            ? ''
            : first;
  // Those who sat there before are counted as in, those still there as out.
  const closed = (at: number): boolean =>
    (first === BEFORE && at >= sizes) || (first === AFTER && (at < sizes || at >= 2 * sizes));
  return `<tr><th scope="row">${shown}</th>${Array.from({ length: cells }, (_, at) => `<td${part === 'tally' && closed(at) ? ' class="shut"' : ''}></td>`).join('')}</tr>`;
}

const style = ({ paper }: SheetFacts): string => `
*{box-sizing:border-box}
@page{size:${paper} landscape;margin:10mm}
html{background:#fff;color:#111}
body{margin:0 auto;padding:10mm;max-width:297mm;font:9pt/1.3 ${FIGURE_FACE};overflow-wrap:anywhere}
h1{font-size:14pt;margin:0 0 2mm}
h2{font-size:11pt;margin:0 0 1mm}
p{margin:0 0 2mm}
.line{display:flex;gap:12mm}
.line span{flex:1;border-bottom:.5pt solid #111}
section{margin:0 0 6mm}
table{width:100%;border-collapse:collapse;font-variant-numeric:tabular-nums}
th,td{border:.5pt solid #888;height:6.4mm;padding:0 1mm;font-weight:400;text-align:left}
thead th{font-weight:600;vertical-align:bottom;text-align:center}
tbody th{width:26mm}
.tally table{table-layout:fixed}
.tally thead th:first-child{width:24mm}
.ware tbody th{width:60mm}
.shut{background:#ddd;print-color-adjust:exact;-webkit-print-color-adjust:exact}
@media screen{html{background:#eee}body{background:#fff}}
@media print{body{padding:0;max-width:none}section{break-inside:avoid}tr{break-inside:avoid}thead{display:table-header-group}}
`;
