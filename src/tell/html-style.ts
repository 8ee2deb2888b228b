/** The letter's style sheet: one column of text, pictures beside what they support, clean in print. */
import { dark, light, print, type LetterColours } from './colours.js';
import { cssString } from './escape-html.js';
import { FIGURE_FACE, TEXT_FACE } from './typefaces.js';
import { english } from './words.js';

const variables = (colours: LetterColours): string =>
  Object.entries(colours)
    .map(([name, value]) => `--${name}:${value}`)
    .join(';');

/** @param name of the place, for the running head; any text */
export function letterStyle(name: string): string {
  const page = english.letter
    .page('counter(page)', 'counter(pages)')
    .map((part) => (part.startsWith('counter(') ? part : cssString(part)))
    .join(' ');
  const head = cssString(
    english.letter.runningHead(name.length > 80 ? `${name.slice(0, 79)}…` : name),
  );
  return `
:root{color-scheme:light dark;--text:${TEXT_FACE};--figures:${FIGURE_FACE};${variables(light)}}
svg text{font-family:var(--figures)}
::file-selector-button{font:inherit}
@media (prefers-color-scheme:dark){:root{${variables(dark)}}}
*{box-sizing:border-box}
html{background:var(--ground);color:var(--ink);-webkit-text-size-adjust:100%}
body{margin:0 auto;padding:.6rem 1.25rem 4rem;max-width:72rem;font:1.0625rem/1.55 var(--text);overflow-wrap:break-word}
h1{font-size:1.05rem;font-weight:400;font-style:italic;color:var(--faint);margin:0 0 .2rem}
.figures{list-style:none;display:flex;flex-wrap:wrap;gap:.25rem 2.25rem;margin:0 0 .4rem;padding:0;max-width:none}
.figures li{margin:0;font:.95rem/1.3 var(--figures);color:var(--faint)}
.figures b{display:block;font-size:2.5rem;line-height:1.1;font-weight:600;color:var(--ink);font-variant-numeric:tabular-nums}
.figures .total{margin-left:auto;text-align:right}
.lead{font-size:1.15rem;line-height:1.35;margin:0 0 .35rem;max-width:none;text-wrap:pretty}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.on-paper{display:none}
h2{font-size:1.3rem;line-height:1.3;font-weight:600;margin:2.75rem 0 .75rem;break-after:avoid}
h3{font-size:1.1rem;line-height:1.35;font-weight:600;margin:0 0 .5rem;break-after:avoid;text-wrap:balance}
p{margin:0 0 .85rem;max-width:42rem}
ul{margin:0 0 1rem;padding-left:1.1rem;max-width:42rem}
li{margin:0 0 .5rem}
.small{font-size:.9rem;line-height:1.5;color:var(--faint)}
.alarm{border-left:3px solid var(--alarm);padding:.1rem 0 .1rem .9rem}
.scroll{overflow-x:auto;margin:0 0 1rem}
.scroll:focus-visible,summary:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
table{border-collapse:collapse;font:.9rem/1.4 var(--figures);font-variant-numeric:tabular-nums;min-width:14rem}
td{white-space:nowrap}
tbody th{min-width:7rem;max-width:20rem;overflow-wrap:anywhere}
caption{text-align:left;font:italic 1rem/1.4 var(--text);color:var(--faint);padding:0 0 .4rem}
th,td{text-align:right;padding:.3rem .75rem;vertical-align:top;font-weight:400}
th:first-child,td:first-child{text-align:left;padding-left:0}
thead th{vertical-align:bottom;color:var(--faint);border-bottom:1px solid var(--line)}
tbody th{text-align:left}
tr.part th{padding-left:1.1rem}
tr.group th,tr.group td{border-top:1px solid var(--line)}
tr.group+tr.group th,tr.group+tr.group td{border-top:0}
tr.total th,tr.total td{border-top:1px solid var(--line);font-weight:600}
.words{width:100%;min-width:30rem;table-layout:fixed}
.words td,.words thead th{text-align:left;white-space:normal;overflow-wrap:anywhere;min-width:5.5rem;padding-left:0}
.words thead th{width:21%}
.words thead th:first-child{width:42%}
.words thead th:last-child{width:16%}
h3.sources{margin-top:1.25rem}
ol.sources{columns:2;column-gap:2.5rem;padding-left:1.5rem;margin:0 0 1rem}
ol.sources li{margin:0 0 .25rem;break-inside:avoid}
.path{color:var(--faint);font-size:.92em}
.basis th{font-weight:600;padding-top:.9rem}
.pieces{font-weight:600}
.beside{display:grid;grid-template-columns:minmax(15rem,1fr) minmax(0,31rem);gap:1rem 2.5rem;margin:0 0 2.5rem;align-items:start}
.pair{display:flex;flex-wrap:wrap;gap:1rem 3.5rem;align-items:flex-start;margin:0 0 1.5rem}
figure{margin:0}
figure svg text{letter-spacing:0!important;word-spacing:0!important}
figure svg{display:block;width:100%;max-width:31rem;height:auto;overflow:visible}
details{margin:.5rem 0 0}
.range{display:block;font:.9rem/1.35 var(--figures);color:var(--faint);margin:.5rem 0 0}
.whole,.narrow,.beside:has(.range>:checked) figure>svg{display:none}
.beside:has(.range>:checked) .whole{display:block}
summary h2{display:inline;font:inherit;color:inherit}
summary{cursor:pointer;color:var(--accent);font-size:.95rem;min-height:1.75rem;width:fit-content}
dl{columns:2;column-gap:2.5rem;margin:0}
dl>div{break-inside:avoid;margin:0 0 1rem}
dt{font-weight:600}
dd{margin:0;font-size:.95rem}
footer{margin-top:3rem;border-top:1px solid var(--line);padding-top:1rem}
@media screen and (max-width:38rem){figure:has(>.narrow)>svg{display:none}figure>.narrow{display:block}figure:not(:has(>.narrow))>.marks text{font-size:13px}}
@media screen and (max-width:52rem){.beside{grid-template-columns:minmax(0,1fr)}dl,ol.sources{columns:1}.lead{font-size:1.05rem}.figures{gap:.25rem 1.25rem}.figures b{font-size:1.7rem}.figures .total{margin-left:0;text-align:left}th,td{padding-left:.45rem;padding-right:.45rem}}
@page{margin:20mm 17mm 18mm;@top-left{content:${head};font:italic 9pt ${TEXT_FACE};color:#444}@bottom-right{content:${page};font:9pt ${TEXT_FACE};color:#444}}
@supports (-moz-appearance:none){@media print{body::after{content:${head};position:fixed;bottom:0;left:0;writing-mode:sideways-lr;font:italic 8.5pt ${TEXT_FACE};color:#444}}}
@media print{
:root{color-scheme:light;${variables(print)}}
body{padding:0;max-width:none;font-size:10pt;line-height:1.4}
h1{margin-bottom:4pt}
.on-paper{display:block}
.figures{gap:2pt 16pt;margin-bottom:8pt}
.figures li{font-size:9pt}
.figures b{font-size:20pt}
.lead{font-size:14pt;margin-bottom:12pt}
h2{font-size:12.5pt;margin:16pt 0 6pt}
h3{font-size:10.5pt}
p,ul{max-width:none;margin-bottom:5pt}
main>p:not(.lead){font-size:9.3pt}
li{margin-bottom:3pt}
table{font-size:8.5pt;min-width:0}
tbody th{min-width:19mm}
caption{font-size:9.5pt}
th,td{padding:1.5pt 6pt}
.small{font-size:8.5pt;line-height:1.35}
dd,dt{font-size:8.5pt;line-height:1.35}
.scroll{overflow:visible}
.pictures{display:grid;grid-template-columns:1fr 1fr;gap:5mm 9mm}
.beside{display:block;margin:0;break-inside:avoid}
dl{column-gap:9mm}
dl>div{margin-bottom:5pt}
.pair{gap:6pt 10mm;margin-bottom:8pt}
.pair td{padding-right:0}
.words{min-width:0}
.scroll:has(.words){columns:2;column-gap:8mm}
.words td,.words th{font-size:7.2pt;line-height:1.2;padding-top:1pt;padding-bottom:1pt;min-width:0}
.words thead th{width:17%}
.words thead th:first-child{width:40%}
.words thead th:nth-child(3){width:25%}
.words thead th:last-child{width:18%}
.named .path{display:none}
.basis th{padding-top:4pt}
ol.sources{font-size:7.2pt;line-height:1.25;columns:3;column-gap:6mm}
details,.range{display:none}
details.folded{display:block;margin:0}
details.folded>summary{display:none}
details.folded::details-content{content-visibility:visible;display:block}
tr,h2,h3{break-inside:avoid}
h2::after,h3::after{content:'';display:block;height:4em;margin-bottom:-4em}
thead{display:table-header-group}
.pair table,footer,h2+p,h2+.pair{break-inside:avoid}
footer{margin-top:10pt;padding-top:5pt}
footer p{margin-bottom:2pt}
figure{break-before:avoid}
.keep{break-after:avoid}
p{orphans:3;widows:3}
}`;
}
