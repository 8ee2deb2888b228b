/**
 * The style of the cards, screen and print. Colours are those of the letter (`--ground`, `--ink` and the
 * rest); in print all is black on white. Sizes hang on the card's own, so that the screen shows what prints.
 *
 * Paper: A4, or US Letter where `body` has `data-paper="letter"`. The cards alone are printed where `body`
 * has `data-print="cards"`. Each card is a page of its own and has its height; drawings take the room
 * that the words leave.
 */

/** mm around a card on its page, and heights of the pages less those and a little for rounding. */
const MARGIN = 11;
const A4_HEIGHT = 297 - 2 * MARGIN - 1;
const LETTER_HEIGHT = 279.4 - 2 * MARGIN - 1;

const noMargins = [
  '@top-left',
  '@top-center',
  '@top-right',
  '@bottom-left',
  '@bottom-center',
  '@bottom-right',
]
  .map((box) => `${box}{content:none}`)
  .join('');

export const cardStyle = `
.card{font-size:1rem;line-height:1.3;max-width:46rem;margin:0 0 2rem;padding:1.5rem;border:1px solid var(--line);background:var(--panel);color:var(--ink);display:flex;flex-direction:column;font-family:var(--figures);overflow-wrap:anywhere}
.card p,.card ul,.card ol{max-width:none;margin:0 0 .5em}
.card header{display:flex;justify-content:space-between;align-items:baseline;gap:1em;border-bottom:2px solid currentColor;padding-bottom:.3em;margin-bottom:.6em;font-size:.95em}
.card header p{margin:0}
.card header .card-date{flex:0 0 11em}
.card h3{font-size:2.1em;line-height:1.1;font-weight:700;margin:0 0 .3em}
.card h4{font-size:1.15em;line-height:1.2;font-weight:700;margin:.5em 0 .25em}
.card li{margin:0 0 .25em}
.card ol,.card ul{padding-left:1.35em}
.card ol{font-size:1.1em}
.card footer{border:0;margin:auto 0 0;padding:.5em 0 0;font-size:.65rem;color:var(--faint)}
.card footer p{margin:0;font-size:1em}
.card-huge{font-size:4.2em;line-height:1;font-weight:700}
.card-strong{font-size:1.2em;font-weight:600}
.card-caution{border:2px solid currentColor;padding:.5em .7em;font-size:.95em}
.card .card-number{display:flex;flex-wrap:wrap;align-items:baseline;gap:0 .35em;font-size:1.3em;line-height:1.1;margin:0 0 .2em}
.card-number b{font-size:2.8em;line-height:1}
.card-single .card-number b{font-size:4.6em}
.card-single{display:grid;grid-template-columns:minmax(0,95mm) minmax(0,1fr);gap:0 1.2em;align-items:start}
.card-drawings{display:grid;gap:.4em 1em;grid-template-columns:1fr 1fr;margin:0 0 .5em}
.card-drawings-1{grid-template-columns:1fr}
.card-drawings-3{grid-template-columns:1fr 1fr 1fr}
.card-drawings-2>div{max-width:76mm}
.card svg{display:block;width:100%;height:auto;max-width:none}
.card-top svg{max-height:95mm}
.card-pairs{display:grid;gap:.6em;margin:0 0 .6em}
.card-pair{display:grid;grid-template-columns:minmax(0,1fr) minmax(0,1fr) minmax(0,1.4fr);gap:0 1em;border-top:1px solid var(--line);padding:.3em 0 0}
.card-pair>div>p:first-child{margin:0 0 .1em;font-weight:600;font-size:.9em}
.card .card-mark{display:inline;width:1.2em;height:1.2em;vertical-align:-.22em;flex:none}
.card-pair h4{margin:0 0 .2em}
.card-pair .card-drawn{font-size:.8em;color:var(--faint)}
.card-undrawn{border:1px dashed currentColor;padding:.8em}
.card-two ol{font-size:1em}
.card-two{display:grid;grid-template-columns:1fr 1fr;gap:0 1.5em}
.card .card-blank{display:flex;align-items:flex-end;gap:.5em;margin:0 0 .45em;min-height:1.9em}
.card-blank span:first-child{flex:0 1 auto}
.card-blank .card-line{flex:1 1 5em;border-bottom:1px solid currentColor;height:1.2em}
.card-blanks{display:grid;grid-template-columns:1fr 1fr;gap:0 1.5em;margin:0 0 .4em}
.card table{width:100%;min-width:0;border-collapse:collapse;font-size:1.1em;line-height:1.25;margin:0 0 .5em}
.card th,.card td{border:1px solid currentColor;padding:.3em .5em;text-align:right;white-space:normal;vertical-align:middle;color:inherit}
.card th:first-child,.card td:first-child{text-align:left;padding-left:.5em;min-width:0;font-weight:600}
.card-fill td,.card-fill th{height:2.3em}
.card .card-tally{table-layout:fixed;font-size:.85em}
.card-tally th,.card-tally td{padding:.25em .2em;text-align:center}
.card-tally th:first-child{width:17%}
.card-tally th:nth-child(2),.card-tally th:nth-child(3){width:11.5%}
.card-tally tbody tr{height:3em}
.card-few tbody tr{height:5em}
.card-week{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.card dl{columns:2;column-gap:1.5em;margin:0;font-size:.82em}
.card dl>div{break-inside:avoid;margin:0 0 .6em}
.card dt{font-size:1.35em;font-weight:700;line-height:1.15}
.card dd{margin:0;font-size:1em}
.card dd span{color:var(--faint)}
@media screen and (max-width:40rem){.card{padding:.9rem}.card-single,.card-two,.card-blanks,.card-drawings,.card-drawings-3{grid-template-columns:1fr}.card-pair{grid-template-columns:1fr 1fr}.card-pair>div:last-child{grid-column:1/-1}.card dl{columns:1}.card-huge{font-size:2.8em}.card-tally{min-width:44rem}.card:has(.card-tally){overflow-x:auto}}
@page card{size:A4;margin:${MARGIN}mm;${noMargins}}
@page card-letter{size:letter;margin:${MARGIN}mm;${noMargins}}
@media print{
.card{page:card;break-before:page;break-after:page;font-size:12.5pt;max-width:none;min-height:${A4_HEIGHT}mm;margin:0;padding:0;border:0;background:none;color:#000}
body[data-paper="letter"] .card{page:card-letter;min-height:${LETTER_HEIGHT}mm}
.card:has(.card-drawings){height:${A4_HEIGHT}mm}
body[data-paper="letter"] .card:has(.card-drawings){height:${LETTER_HEIGHT}mm}
.card-drawings{flex:1 1 0;min-height:42mm;max-height:140mm;grid-template-rows:minmax(0,1fr)}
.card-drawings>div{display:flex;flex-direction:column;min-height:0;max-width:none}
.card-drawings svg{flex:1 1 0;min-height:0}
.card-top{display:flex;flex-direction:column;max-height:100mm}
.card-mistakes{height:${A4_HEIGHT}mm;font-size:11pt}
body[data-paper="letter"] .card-mistakes{height:${LETTER_HEIGHT}mm}
.card-pairs{flex:1 1 0;min-height:0;grid-template-rows:repeat(5,minmax(0,1fr))}
.card-pair{min-height:0}
.card-pair>div{display:flex;flex-direction:column;min-height:0}
.card-pair>div>svg{flex:1 1 0;min-height:0}
.card-large{font-size:13.5pt}
.card-dense{font-size:11.5pt}
.card footer,.card dd span{color:#000}
.card th,.card td,.card tr{break-inside:avoid}
body[data-print="cards"] main>:not([data-part="cards"]),body[data-print="cards"]>:not(main){display:none}
}`;
