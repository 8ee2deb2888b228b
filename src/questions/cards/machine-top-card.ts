/** The machine top: what stands on it, how high, and at how many left somebody fetches more. */
import { english } from '../../tell/words.js';
import type { StorageLayout } from '../../ordering/storage.js';
import { drawMachineTop } from '../order/machine-top.js';
import { escapeHtml } from '../../tell/escape-html.js';
import { blank, cardOf, fewNames, head, para, type Card, type CardDesk } from './card.js';

/** Rows of the table that a page has room for. */
const MOST_ROWS = 10;
const MOST_TO_DECIDE = 6;
/** What has its place on the machine, where nobody has said. */
const ON_MACHINE = ['cup', 'glass'];
const LEAST_ROWS = 4;

export function machineTopCard(desk: CardDesk): readonly Card[] {
  const { storage } = desk;
  const say = english.cards.top;
  const body = `${storage == null ? toDecide(desk) : decided(desk, storage)}
${para(`${english.cautions.stacks.text} ${say.hot} ${english.cautions.defers}: ${english.cautions.stacks.defersTo}.`, 'card-caution')}`;
  return [cardOf(desk, 'machine-top', say.title, body, storage == null ? 'card-large' : '')];
}

function decided(desk: CardDesk, layout: StorageLayout): string {
  const { formats, name } = desk;
  const say = english.cards.top;
  const up = layout.lines.filter(({ onTop }) => onTop > 0);
  const shown = up.slice(0, MOST_ROWS);
  const below = layout.lines
    .filter(({ onTop, inReserve }) => onTop === 0 && inReserve > 0)
    .map(({ ware }) => name(ware));
  const rows = shown.map(({ ware, onTop, inReserve, trigger }) => [
    name(ware),
    formats.count(onTop),
    formats.count(inReserve),
    trigger === null ? say.allUp : formats.count(trigger),
  ]);
  const homeless = layout.homeless.map(
    ({ ware, pieces }) => `${formats.count(pieces)} × ${name(ware)}`,
  );
  const drawn = {
    ...layout,
    lines: shown.map((line) => ({ ...line, name: name(line.ware) })),
    stacks: layout.stacks.filter(({ ware }) => shown.some((line) => line.ware === ware)),
  };
  return `${para(say.high(formats.count(layout.top.high)), 'card-huge')}
${para(say.highText, 'card-strong')}
<div class="card-drawings card-drawings-1 card-top">${drawMachineTop(drawn, formats)}</div>
${table(say.headings, rows)}
${para(up.length > shown.length ? say.more(formats.count(up.length - shown.length)) : '')}
${para(below.length === 0 ? '' : say.reserveOnly(fewNames(below, desk)))}
${para(say.fetch, 'card-strong')}
${para(homeless.length === 0 ? '' : say.homeless(fewNames(homeless, desk, 4)))}
${para(layout.massG === null ? '' : say.heavy(formats.mass(layout.massG)))}
${layout.massLimitG === null ? blank(say.limitBlank) : para(say.limit(formats.mass(layout.massLimitG)))}`;
}

/** Where nothing is said of storage: what to decide, with room to write it down. */
function toDecide({ context, name }: CardDesk): string {
  const say = english.cards.top;
  const wares = context.ware
    .filter(({ kind }) => ON_MACHINE.includes(kind))
    .slice(0, MOST_TO_DECIDE);
  const named = wares.map(({ id }) => [name(id), '', '', '']);
  const rows = [
    ...named,
    ...Array.from({ length: Math.max(0, LEAST_ROWS - named.length) }, () => ['', '', '', '']),
  ];
  return `${head(say.decideTitle)}
${para(say.decideText, 'card-strong')}
${table(say.headings, rows, 'card-fill')}
${say.decide.map((label) => blank(label)).join('\n')}
${para(say.fetch, 'card-strong')}`;
}

function table(
  headings: readonly string[],
  rows: readonly (readonly string[])[],
  kind = '',
): string {
  const cells = rows.map(
    ([first = '', ...rest]) =>
      `<tr><th scope="row"><bdi>${escapeHtml(first)}</bdi></th>${rest.map((cell) => `<td>${escapeHtml(cell)}</td>`).join('')}</tr>`,
  );
  return `<table class="card-table${kind === '' ? '' : ` ${kind}`}"><thead><tr>${headings.map((heading) => `<th scope="col">${escapeHtml(heading)}</th>`).join('')}</tr></thead><tbody>${cells.join('')}</tbody></table>`;
}
