/** Style of the walk. Lines and fills are the letter's own colours, so that light, dark and contrast follow it. */
export const walkStyle = `
.walk h3{font-size:1rem;line-height:1.35;margin:0 0 .4rem}
.walk svg{display:block;max-width:100%;fill:none;stroke:none}
.walk-controls{display:flex;flex-wrap:wrap;gap:.5rem .75rem;align-items:flex-end;margin:0 0 .75rem}
.walk-controls button{min-height:2.25rem}
.walk-play{min-width:5rem}
.walk-time{margin:0 0 .25rem}
.walk-ends{display:flex;justify-content:space-between;font-size:.9rem;color:var(--faint)}
.walk-ends label{color:var(--ink)}
.walk-time input{display:block;width:100%;margin:0;padding:0;border:0;min-height:1.75rem;accent-color:var(--accent);background:transparent}
.walk .w-course{width:calc(100% - 16px);max-width:none;height:56px;margin:0 8px}
.walk-tell{min-height:3.1rem;max-width:none;margin:.5rem 0 1rem}
.walk-floor{display:grid;grid-template-columns:minmax(0,22rem) minmax(0,1fr);gap:1.25rem 2rem;align-items:start}
.walk-where table{min-width:0;width:100%}
.walk-where th{font-weight:400;padding:.2rem .5rem .2rem 0;min-width:0}
.walk-where td{padding:.2rem .5rem .2rem 0}
.walk-where td.walk-bar{width:40%;padding-right:0;vertical-align:middle}
.walk-where td.walk-bar svg{width:100%}
.walk-where tr.walk-most th,.walk-where tr.walk-most td{font-weight:600;color:var(--alarm)}
.walk-where .walk-note{display:block;font-weight:400;font-size:.85em}
.walk-note{font-weight:400;color:var(--alarm)}
.walk-stations{display:grid;grid-template-columns:repeat(3,minmax(0,1fr));gap:1.25rem 2rem;margin:1.25rem 0 1rem}
.walk-station{border-top:1px solid var(--line);padding-top:.5rem;min-width:0}
.walk-station.walk-most{border-top:4px solid var(--alarm);padding-top:calc(.5rem - 3px)}
.walk-wide{grid-column:span 2}
.walk-room+.walk-station{margin-top:1rem}
.walk-small{font-size:.9rem;line-height:1.4;color:var(--faint);margin:0 0 .4rem}
.walk-short,.walk-bare{color:var(--alarm);font-size:.95rem;margin:0 0 .4rem}
.walk-racks{display:flex;flex-wrap:wrap;gap:.75rem 1rem;align-items:flex-end}
.walk-racks figure{width:7.5rem}
.walk-racks figure.walk-waits,.walk-machines figure{width:5.75rem}
.walk-racks figcaption{font-size:.85rem;line-height:1.3;color:var(--faint);overflow-wrap:anywhere}
.walk-racks .walk-waits figcaption{color:var(--alarm)}
.walk-machines{display:flex;flex-wrap:wrap;gap:1rem 2rem}
.walk-shelf{display:flex;flex-wrap:wrap;gap:.6rem 1.5rem}
.walk-shelf>div{font-size:.9rem;line-height:1.35}
.walk-shelf .walk-followed{font-weight:600}
.walk-legend{display:flex;flex-wrap:wrap;gap:.25rem 1.25rem;font-size:.85rem;color:var(--faint);margin:.5rem 0 0}
.walk-key{display:inline-flex;gap:.4rem;align-items:center}
.walk-older{opacity:.6}
.w-seat{stroke:var(--line);stroke-width:1}
.w-guest{fill:var(--ink)}
.w-table{stroke:var(--line);stroke-width:1.25}
.w-table-dirty{stroke:var(--alarm);stroke-width:1.5;stroke-dasharray:4 3}
.w-followed{fill:var(--accent);stroke:var(--accent);stroke-width:1.5;stroke-linecap:round}
.w-other{stroke:var(--faint);stroke-width:1;stroke-linecap:round}
.w-dirty{stroke:var(--alarm);stroke-width:1.75;stroke-linecap:round}
.w-wall{stroke:var(--line);stroke-width:6}
.w-cells{stroke:var(--line);stroke-width:2;opacity:.7}
.w-place{stroke:var(--line);stroke-width:2.5;stroke-dasharray:8 9}
.w-racked{fill:var(--accent);stroke:var(--ground);stroke-width:3;stroke-linejoin:round}
.w-row{fill:var(--accent);stroke:var(--accent);stroke-width:6;stroke-linecap:round}
.w-racked-other{fill:var(--panel);stroke:var(--faint);stroke-width:5;stroke-linejoin:round}
.walk-waits .w-wall{stroke:var(--alarm);stroke-width:12}
.w-waits{stroke:var(--faint);stroke-width:1.25}
.w-line,.w-axis,.w-foot{stroke:var(--line);stroke-width:1}
.w-tray,.w-tray-other{fill:var(--ground);stroke:var(--faint);stroke-width:1.5;stroke-linejoin:round}
.w-tray{stroke:var(--accent);stroke-width:2.25}
.w-end,.w-load{fill:var(--faint);font:11px var(--figures)}
.w-load{fill:var(--ink);font-size:13px}
.w-bar{stroke:var(--line);stroke-width:1}
.w-done{fill:var(--accent)}
.w-hand{fill:var(--faint)}
.w-stack{stroke:var(--accent)}
.w-stack-other{stroke:var(--faint)}
.w-gone{stroke:var(--line);opacity:.55}
.w-shelf{fill:var(--accent)}
.w-stop{fill:var(--faint)}
.w-most{fill:var(--alarm)}
.w-shelf-line{stroke:var(--accent);stroke-width:2;vector-effect:non-scaling-stroke}
.w-short-marks{stroke:var(--alarm);stroke-width:2;vector-effect:non-scaling-stroke}
.w-now{stroke:var(--ink);stroke-width:1.5;vector-effect:non-scaling-stroke}
@media (max-width:62rem){.walk-stations{grid-template-columns:repeat(2,minmax(0,1fr))}}
@media (max-width:52rem){.walk-floor,.walk-stations{grid-template-columns:minmax(0,1fr)}.walk-wide{grid-column:auto}.walk-tell{min-height:6.2rem}}
@media print{.walk{display:none!important}}
`;
