/** Style of what the page adds to the letter: boxes under sentences, and what print leaves out. */
export const pageStyle = (): string => `
[data-island]{display:block}
[data-older]{opacity:.55;transition:opacity .2s}
.boxes{display:flex;flex-wrap:wrap;gap:1rem 1.5rem;align-items:flex-end;margin:0 0 1rem}
.box{display:flex;flex-direction:column;gap:.2rem;max-width:15rem}
.box>.hint{white-space:pre-line}
.box label,fieldset legend{font-size:.9rem;line-height:1.35;color:var(--faint)}
input,select,textarea,button{font:1rem/1.3 var(--figures);color:var(--ink);background:var(--ground);border:1px solid var(--line);border-radius:2px;min-height:2.25rem;padding:.3rem .5rem}
input[type=radio],input[type=checkbox]{min-height:0;width:1.25rem;height:1.25rem;accent-color:var(--accent);vertical-align:-.25rem}
input[type=text]{width:9rem;font-variant-numeric:tabular-nums}
input[type=text].wide{width:18rem;max-width:100%}
button{cursor:pointer;color:var(--accent);border-color:var(--accent)}
button:hover{background:var(--panel)}
button:disabled{color:var(--faint);border-color:var(--line);cursor:default}
:is(input,select,textarea,button,a):focus-visible{outline:3px solid var(--accent);outline-offset:2px}
[aria-invalid=true]{border-color:var(--alarm);border-width:2px}
.wrong{color:var(--alarm);font-size:.9rem;line-height:1.35;margin:.1rem 0 0}
.status{min-height:3.2rem;color:var(--faint);font-size:.95rem;max-width:42rem}
.head{display:flex;flex-wrap:wrap;gap:.5rem 2rem;align-items:center;justify-content:space-between;margin:0 0 2rem;border-bottom:1px solid var(--line);padding:0 0 .75rem;font-size:.95rem}
.head fieldset{border:0;margin:0;padding:0;display:flex;flex-wrap:wrap;gap:.25rem 1.25rem;align-items:center}
.head fieldset legend{float:left;padding:0 1rem 0 0}
.sender{display:flex;gap:1rem;align-items:center;margin:0 0 1.25rem}
.sender img{max-height:4rem;max-width:12rem}
fieldset.choices{display:flex;flex-wrap:wrap;gap:.5rem 1.25rem;border:1px solid var(--line);margin:0 0 1rem;padding:.5rem .75rem .75rem}
.row{display:flex;flex-wrap:wrap;gap:.75rem 1rem;align-items:center;margin:0 0 1rem}
.tools{display:flex;flex-wrap:wrap;gap:.5rem;margin:.5rem 0 0}
.tools button{font-size:.85rem;min-height:1.75rem;padding:.15rem .5rem}
details.ask{border-top:1px solid var(--line);padding:.6rem 0;margin:0}
details.ask:last-of-type{border-bottom:1px solid var(--line)}
details.ask>summary{font-size:1.05rem;width:auto}
.ask h2{margin-top:1rem}
@media (prefers-reduced-motion:reduce){*{transition:none!important;animation:none!important;scroll-behavior:auto!important}}
@page{margin:16mm 15mm 15mm}
@media print{
[data-island]:not([data-island=sender]),.tools,.sources .screen{display:none!important}
[data-older]{opacity:1}
.lead{font-size:13pt;margin-bottom:8pt}
h2{margin-top:11pt}
.pictures{gap:3mm 9mm}
.pictures figure svg{max-width:66mm}
[data-part=pictures] p{font-size:9pt;line-height:1.35}
.pair td,.pair th{padding-top:.5pt;padding-bottom:.5pt}
[data-part=findings] ul{columns:2;column-gap:9mm;font-size:8pt;line-height:1.3}
[data-part=findings] li{break-inside:avoid;margin-bottom:2pt}
[data-part=cautions] :is(dd,dt){font-size:8pt;line-height:1.3}
[data-part=cautions] dl>div{margin-bottom:3pt}
ol.sources li{margin-bottom:0}
.scroll:has(.words){column-gap:6mm}
.words td,.words th{font-size:6.8pt;line-height:1.15;padding:.5pt 4pt .5pt 0}
[data-part=method]{columns:2;column-gap:9mm;font-size:8.5pt;line-height:1.35}
[data-part=method] h2{column-span:all}
}
`;
