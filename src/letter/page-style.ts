/**
 * Style of what the page adds to the letter: boxes under sentences, and what print leaves out. Firefox knows neither
 * margin boxes nor `break-after: avoid`: there the name stands along the left edge, beside the text on every page, and
 * tables that it does not break over columns take the whole width.
 */
export const pageStyle = (): string => `
[data-island]{display:block}
.view{display:grid;grid-template-columns:minmax(18rem,24rem) minmax(0,1fr);gap:0 2.5rem;border-top:1px solid var(--line);padding:.6rem 0 0;margin:0 0 .5rem}
.view h2{margin:0 0 .4rem;font-size:1.05rem}
[data-island=questions]>section>h2{margin:.25rem 0 .3rem;font-size:1.05rem}
.view .beside{display:block;margin:0}
.view .beside p{font-size:.85rem;line-height:1.4;color:var(--faint);margin:0;max-width:none}
.view .beside h3{font-size:1.05rem;margin:0 0 .25rem}
.view .beside>div{display:contents}
.view .beside details{min-width:0;max-width:100%}
.view .beside{display:flex;flex-wrap:wrap;gap:.15rem 1.5rem}
.view .beside :is(h3,p,figure){flex:1 0 100%}
.view .beside details[open]{flex:1 0 100%}
.view .beside figure{order:1}
.view .beside p{order:2}
.view .beside details{order:3;margin:.25rem 0 0}
.view .beside .tools{order:4}
.view figure svg{max-width:none}
.boxes:is(.six,.level){display:grid;grid-template-columns:1fr 1fr;gap:.45rem 1rem;margin:0 0 .45rem}
.six .hint,.level .hint{font-size:.7rem;line-height:1.1;min-height:.8rem}
.six .box,.level .box{gap:.1rem}
.six .wrong,.level .wrong{margin:0}
.six .box label,.level .box label{line-height:1.2}
[data-part=measured] p{margin:0 0 .2rem;font-size:.85rem;max-width:none}
.boxes:is(.six,.level) .box{max-width:none;width:auto}
.boxes:is(.six,.level) .box :is(input[type=text],textarea){width:100%;min-height:2rem;padding:.15rem .5rem;line-height:1.55}
:is(.six,.level) .box{min-height:4.1rem}
.six .box label,.level .box label{font:.85rem/1.3 var(--figures)}
#pieces{margin:0}
.changed{border-left:4px solid var(--accent);background:var(--panel);padding:.35rem .9rem;margin:.15rem 0 .5rem;display:flex;flex-wrap:wrap;gap:.25rem 1rem;align-items:center;justify-content:space-between}
.changed p{margin:0;max-width:none;flex:1 1 24rem;font-size:.95rem;line-height:1.4}
.changed .part{display:inline-block;max-width:100%}
.changed .row{margin:0;gap:.35rem .6rem}
.changed button{min-height:1.75rem;padding:.1rem .55rem;font-size:.85rem}
.differs :is(th,td){font-weight:600}
.beside-letters td{white-space:normal;max-width:20rem}
.beside-letters .scroll+.scroll .differs :is(th,td){font-weight:400}
.provisional{color:var(--alarm)}
body[data-phase=provisional] .lead::before{content:'PROVISIONAL. ';color:var(--alarm);font-weight:600}
body[data-phase=working] .lead::before{content:'BEFORE THE CHANGE. ';color:var(--alarm);font-weight:600}
body:is([data-phase=provisional],[data-phase=working]) [data-part=method]::before{content:'PROVISIONAL: worked out on few days; the final answer follows.';color:var(--alarm);font-weight:600}
body:is([data-phase=provisional],[data-phase=working]) .figures b{color:var(--faint)}
button.plain{min-height:0;padding:0 .5rem;font-size:.85rem}
[data-older],[data-stale]{opacity:.55;transition:opacity .2s}
.boxes{display:flex;flex-wrap:wrap;gap:1rem 1.5rem;align-items:flex-end;margin:0 0 1rem}
.boxes.begin{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,15rem),1fr));align-items:start}
.begin .box{max-width:none}
.begin .broad{grid-column:span 2}
.begin label{min-height:2.7em;display:flex;align-items:flex-end}
.houses{display:grid;grid-template-columns:repeat(auto-fit,minmax(10rem,1fr));gap:.75rem 1rem;margin:0 0 1rem}
.files .box{max-width:26rem;margin:0 0 1rem}
.begin .box>:is(input,select){width:100%}
.box{display:flex;flex-direction:column;gap:.2rem;max-width:15rem}
.hint{font:.8rem/1.35 var(--figures);color:var(--faint)}
.box>.hint{white-space:pre-line}
.box label,fieldset legend{font-size:.9rem;line-height:1.35;color:var(--faint)}
input,select,textarea,button{font:1rem/1.3 var(--figures);color:var(--ink);background:var(--ground);border:1px solid var(--line);border-radius:2px;min-height:2.25rem;padding:.3rem .5rem}
input[type=radio],input[type=checkbox]{min-height:0;width:1.25rem;height:1.25rem;accent-color:var(--accent);vertical-align:-.25rem}
input[type=text]{width:9rem;font-variant-numeric:tabular-nums}
input[type=text].wide{width:18rem;max-width:100%}
button{cursor:pointer;max-width:100%;overflow-wrap:anywhere;color:var(--accent);border-color:var(--accent)}
button:hover{background:var(--panel)}
button:disabled{color:var(--faint);border-color:var(--line);cursor:default}
:is(input,select,textarea,button,a):focus-visible{outline:3px solid var(--accent);outline-offset:2px}
:is(.six,.level) :focus-visible{outline-offset:0}
[aria-invalid=true]{border-color:var(--alarm);border-width:2px}
.wrong{color:var(--alarm);font-size:.9rem;line-height:1.35;margin:.1rem 0 0}
.status{color:var(--faint);font-size:.85rem;line-height:1.4}
.status p{margin:0 0 .4rem;max-width:none}
.head{display:flex;flex-wrap:wrap;gap:.25rem 2rem;align-items:center;justify-content:space-between;margin:0 0 .5rem;border-bottom:1px solid var(--line);padding:0 0 .25rem;font-size:.9rem}
.head details,.head .boxes,.head .box{min-width:0;max-width:100%}
input[type=file]{max-width:100%;min-width:0}
.head fieldset{border:0;margin:0;padding:0;display:flex;flex-wrap:wrap;gap:.25rem 1.25rem;align-items:center}
.head fieldset legend{float:left;padding:0 1rem 0 0}
.sender{display:flex;gap:1rem;align-items:center;margin:0 0 1.25rem}
.sender img{max-height:4rem;max-width:12rem}
fieldset.choices{display:flex;flex-wrap:wrap;gap:.5rem 1.25rem;border:1px solid var(--line);margin:0 0 1rem;padding:.5rem .75rem .75rem}
.row{display:flex;flex-wrap:wrap;gap:.75rem 1rem;align-items:center;margin:0 0 1rem}
.house{display:block;margin:.5rem 0 .25rem;text-align:left}
.house svg{display:block;width:100%;height:auto}
.house small{display:block;margin:.4rem 0 0;font-size:.85rem;line-height:1.35;color:var(--faint)}
.tools{margin:.25rem 0 0}
.tools div{display:flex;flex-wrap:wrap;gap:.5rem}
.tools button{font-size:.85rem;min-height:1.75rem;padding:.15rem .5rem}
.asks{display:flex;flex-wrap:wrap;gap:.5rem;align-items:flex-start}
.asks>details.ask{border:0;padding:0}
.asks>details.ask>summary{border:1px solid var(--accent);border-radius:2px;padding:.35rem .7rem;font:.95rem/1.3 var(--figures);list-style:none}
.asks>details.ask>summary::-webkit-details-marker{display:none}
.asks>details.ask[open]{flex:1 0 100%;min-width:0;max-width:100%;order:1}
.asks>details.ask[open]>summary{background:var(--panel);font-weight:600;margin:0 0 .9rem}
.ask>form.boxes{align-items:flex-end}
.ask>form>.box{max-width:26rem;margin:0 0 .75rem}
.ask>form>.row{margin-top:.9rem}
details.ask{border-top:1px solid var(--line);padding:.6rem 0;margin:0}
details.ask:last-of-type{border-bottom:1px solid var(--line)}
details.ask>summary{font-size:1.05rem;width:auto}
.ask h2{margin-top:1rem}
@media screen and (max-width:36rem){.head fieldset legend{float:none}.begin .broad{grid-column:auto}.begin label{min-height:0}}
@media screen and (max-width:52rem){.view{grid-template-columns:minmax(0,1fr)}.view .beside{margin:.75rem 0 0}body{padding-left:.9rem;padding-right:.9rem}[data-part=figures]{position:sticky;top:0;z-index:2;background:var(--ground);border-bottom:1px solid var(--line);margin:0 0 .5rem}.figures .total{order:-1}.figures{gap:0 .9rem;margin:0;padding:.25rem 0}.figures li{white-space:nowrap;font-size:.75rem;max-width:8rem;overflow:hidden;text-overflow:ellipsis}.figures b{font-size:1.15rem}}
@media (prefers-reduced-motion:reduce){*{transition:none!important;animation:none!important;scroll-behavior:auto!important}}
@page{margin:16mm 15mm 15mm}
@media print{
[data-island]:not([data-island=sender],[data-island=questions]),.tools,.sources .screen,#asleep{display:none!important}
[data-older],[data-stale]{display:none}
.view{display:block;border:0;padding:0;margin:0}
.view figure svg{max-width:none}
.on-paper:not(span){float:right;font-size:9pt;margin:2pt 0 0 12pt}
.view .beside{display:grid;grid-template-columns:58mm 1fr;gap:0 6mm}
.view .beside h3{grid-column:1/-1;font-size:10.5pt}
.view .beside :is(p,figure){order:0}
.view .beside p{font-size:8.5pt}
[data-part=measured] p{font-size:8.5pt;line-height:1.35;margin-bottom:3pt}
[data-island=questions] :is(section>h2,.wait,[role=status],.lead-in,form,button),[data-island=questions] details:not([open]){display:none}
[data-island=questions] details[open]{display:block;border:0;padding:0;margin:0 0 8pt}
[data-island=questions] details[open]>summary{display:none}
[data-island=questions] .beside details{display:none}
[data-island=questions] .pictures{grid-template-columns:1fr 1fr;gap:4mm 8mm}
[data-island=questions] .pictures>:only-child{grid-column:1/-1;display:grid;grid-template-columns:58mm minmax(0,112mm);gap:0 6mm;margin-bottom:6pt}
.lead{font-size:12pt;margin-bottom:6pt}
h2{margin-top:9pt}
[data-part=pictures] h2::after{height:15em;margin-bottom:-15em}
.pictures{grid-template-columns:1fr 1fr 1fr;gap:2mm 6mm}
.pictures figure svg{max-width:100%}
[data-part=pictures] p{font-size:8.5pt;line-height:1.3}
.pair td,.pair th{padding-top:.5pt;padding-bottom:.5pt}
[data-part=findings] ul{columns:2;column-gap:9mm;font-size:8pt;line-height:1.3}
[data-part=findings] li{break-inside:avoid;margin-bottom:2pt}
[data-part=cautions] :is(dd,dt){font-size:8pt;line-height:1.3}
[data-part=cautions] dl>div{margin-bottom:3pt}
[data-part=cautions] dd .small{font-size:1em;line-height:inherit}
ol.sources li{margin-bottom:0}
.scroll:has(.words){column-gap:6mm}
.words td,.words th{font-size:6.8pt;line-height:1.15;padding:.5pt 4pt .5pt 0}
[data-part=method]{columns:2;column-gap:9mm;font-size:8.5pt;line-height:1.35}
[data-part=method] h2{column-span:all}
[data-part=order] p{font-size:8.5pt;line-height:1.3}
body[data-reader=owner] :is([data-part=rush],[data-part=pictures],[data-part=findings],[data-part=recorded],[data-part=inputs],[data-part=method]){display:none}
body[data-reader=owner] [data-part=cautions] :is(dd,dt){font-size:6.8pt;line-height:1.15}
body[data-reader=owner] h2{margin:4pt 0 2pt;font-size:11pt}
body[data-reader=owner] [data-part=mind] :is(p,li){font-size:8.5pt;line-height:1.25;margin-bottom:2pt}
body[data-reader=owner] [data-part=cautions] dl{columns:3;column-gap:5mm}
body[data-reader=owner] .lead{font-size:11pt;margin-bottom:3pt}
body[data-reader=owner] .figures b{font-size:14pt}
body[data-reader=owner] .figures{margin-bottom:3pt}
body[data-reader=owner] [data-part=order] :is(p,.scroll){margin-bottom:2pt;font-size:7.5pt}
body[data-reader=owner] [data-part=order] :is(th,td){padding-top:.5pt;padding-bottom:.5pt}
body[data-reader=owner] [data-part=measured] p{font-size:8pt;line-height:1.3}
body[data-reader=owner] .view figure svg{max-width:118mm}
body[data-reader=owner] footer{margin-top:4pt;padding-top:2pt}
body[data-reader=owner] footer p{font-size:7.2pt;line-height:1.2;margin:0}
}
@supports (-moz-appearance:none){
@page{margin-left:8mm}
@media print{body{padding-left:7mm}.scroll:has(.words){columns:1}h2:has(+.pair)::after{height:20em;margin-bottom:-20em}}
}
`;
