/** What sections need beside the letter's own style sheet: room round their parts, words to the left, drawings side by side. */
export const sectionStyle = (): string => `
h3.part{margin-top:1.5rem}
details.part{margin-bottom:1.5rem}
td.word,thead th.word{text-align:left}
.sum{white-space:nowrap}
.drawings{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,24rem),1fr));gap:1.5rem 3rem;margin:0 0 1.5rem}
.drawings .beside{display:block;margin:0}
.drawings details{margin-bottom:.75rem}
@media print{table.section{break-inside:avoid}table.section tbody th{min-width:17mm}table.section td.word{white-space:normal}.drawings{grid-template-columns:1fr 1fr;gap:4mm 9mm}.drawings figure svg{max-width:76mm}h3.part{margin-top:8pt}}
`;
