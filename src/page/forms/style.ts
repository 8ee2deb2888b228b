/** What forms add to the page's style. */
export const formStyle = `
.boxes{align-items:flex-start}
.box>.hint{max-width:15rem}
summary>.hint{margin-left:.75rem}
.box>.wrong:empty{display:none}
::placeholder{color:var(--faint);opacity:1}
.box.short textarea{width:9rem}
.box.wide{max-width:min(18rem,100%);width:18rem}
.box:is(.wide,.long) textarea{width:100%}
.box textarea{resize:none;font-variant-numeric:tabular-nums}
.box.long textarea{resize:vertical}
.box select{max-width:15rem}
.box.long{max-width:min(26rem,100%);width:26rem}
.thing{border-left:2px solid var(--line);padding:.25rem 0 .25rem 1rem;margin:.5rem 0}
.more{margin:.25rem 0 .75rem}
.rests{border:0;border-left:2px solid var(--line);margin:.5rem 0 1rem;padding:0 0 0 1rem;min-width:0}
.rests .boxes{margin:.35rem 0 0}
.rests>legend{padding:0}
.law{border:0;margin:0;padding:0;min-width:0;display:flex;flex-wrap:wrap;gap:.2rem .75rem;align-items:flex-start}
.law input[type=text]{width:7rem}
.law .tick{align-self:center;font-size:.9rem}
.waiting{border-left:3px solid var(--alarm);padding:.1rem 0 .1rem .9rem;margin:0 0 1rem}
.whole-text textarea{display:block;width:100%;margin:.25rem 0 .75rem;font:.85rem/1.45 ui-monospace,monospace;tab-size:2;white-space:pre;overflow:auto}
.whole-text label{font-size:.9rem;color:var(--faint)}
.to-line{min-height:1.75rem;padding:.1rem .5rem;font-size:.85rem}
.fill-in :is(td,th){padding:.1rem .15rem;vertical-align:middle}
.fill-in thead th{width:3.6rem;min-width:0;vertical-align:bottom;font-size:.8rem;line-height:1.2;padding-bottom:.3rem}
.fill-in tbody th{font-weight:400;white-space:nowrap}
.fill-in input{width:3.2rem;min-width:0}
.fill-in input.first{width:5rem}
.fill-in .shut{background:var(--panel)}
.fill-in .wrong p{margin:0 0 .25rem}
@media (max-width:30rem){.box,.box:is(.wide,.long){width:100%;max-width:none}.box>:is(input[type=text],textarea,select){width:100%;max-width:none}}
`;
