/** Rack cards: a family each, a large one on several. How a full rack looks and how many it is, who may share it, and what air in it costs. */
import { english } from '../../tell/words.js';
import { rackKind } from '../../catalogue/catalogue.js';
import { meanMs } from '../../engine/durations.js';
import { familyOf, rackKindOf } from '../../scenario/pieces-per-rack.js';
import { drawRack } from '../../tell/drawings/rack-drawing.js';
import { escapeHtml } from '../../tell/escape-html.js';
import {
  blank,
  cardOf,
  fewNames,
  head,
  list,
  para,
  short,
  spell,
  type Card,
  type CardDesk,
} from './card.js';
import { half, rush } from './rack-costs.js';
import { rackedOf, type Racked } from './racked.js';
import { changedMeasure } from '../../tell/words/dimensions.js';

/** Kinds of ware that a page has room for. */
const A_PAGE = 3;
const MOST_WIDER = 2;
/** Places at and after which a piece waits for the wash, by the names of the answer. */
const AT_THE_WASH = ['on the bench', 'racked', 'in the machine'];

export function rackCards(desk: CardDesk): readonly Card[] {
  const { scenario } = desk;
  const families = [
    ...new Set(Object.entries(scenario.ware).map(([id, ware]) => familyOf(id, ware))),
  ];
  const pages = families.flatMap((family) => {
    const kind = rackKindOf(scenario.racks, family);
    const all = Object.entries(scenario.ware).flatMap(([id, ware]) =>
      familyOf(id, ware) === family ? [rackedOf(scenario, id, kind)] : [],
    );
    return Array.from({ length: Math.ceil(all.length / A_PAGE) }, (_, page) => ({
      kind,
      all,
      wares: all.slice(page * A_PAGE, (page + 1) * A_PAGE),
    }));
  });
  return pages.map((page, index) => rackCard(desk, page, index + 1));
}

/** `all`: the ware of the family; `wares`: those of them on this card. */
function rackCard(
  desk: CardDesk,
  {
    kind,
    all,
    wares,
  }: { readonly kind: string; readonly all: readonly Racked[]; readonly wares: readonly Racked[] },
  number: number,
): Card {
  const { name } = desk;
  const say = english.cards.rack;
  const rackName = short(rackKind(kind)?.name ?? kind);
  const title = say.title(wares.map(({ id }) => name(id)).join(', '));
  const alone = wares.length === 1;
  const way = `${list([...steps(desk, wares), say.stop, ...whenItGoes(desk)], true)}
${para(
  all.length === 1
    ? say.alone(name(all[0]!.id))
    : say.shares(
        fewNames(
          all.map(({ id }) => name(id)),
          desk,
        ),
      ),
  'card-strong',
)}
${para(hasBoth(desk) ? say.apart(hasBoth(desk, all)) : '', 'card-strong')}`;
  const cost = `${head(say.halfTitle)}
${para(half(desk, wares))}
${para(rush(desk))}`;
  const [sentences, waiting] = [shapes(desk, wares), stuck(desk, wares)];
  const shape = `${sentences.length + waiting.length === 0 ? '' : head(say.shapeTitle)}
${sentences.map((text) => para(text)).join('\n')}
${para(waiting)}`;
  const pictures = wares.map((ware, index) =>
    pictured(desk, ware, `card-rack-${number}-${index + 1}`, wares.length),
  );
  const body = `${para(alone ? say.fullOnce(rackName) : say.fullEach(rackName))}
${
  alone
    ? `<div class="card-single"><div>${pictures[0]!.picture}</div><div>${pictures[0]!.number}${way}</div></div>
<div class="card-two"><div>${cost}</div><div>${shape}</div></div>`
    : `<div class="card-drawings card-drawings-${pictures.length}">${pictures.map(({ number, picture }) => `<div>${number}${picture}</div>`).join('')}</div>
<div class="card-two"><div>${way}</div><div>${cost}${shape}</div></div>`
}
${para([heavy(desk, wares), say.hot].filter((text) => text !== '').join(' '), 'card-caution')}`;
  return cardOf(desk, `rack-${number}`, title, body, alone ? '' : 'card-dense');
}

/** The number of a full rack, large. */
const count = ({ formats, name }: CardDesk, { id, pieces }: Racked): string =>
  `<p class="card-number"><b>${escapeHtml(formats.count(pieces))}</b> <bdi>${escapeHtml(name(id))}</bdi></p>`;

/** A ware's number, and its drawing or room to write what was counted. */
function pictured(
  desk: CardDesk,
  ware: Racked,
  id: string,
  beside: number,
): { readonly number: string; readonly picture: string } {
  const { formats, name } = desk;
  const say = english.cards.rack;
  const picture =
    ware.drawn === null
      ? `<div class="card-undrawn">${para(say.given[ware.from])}${para(say.noPicture)}${blank(say.counted)}</div>`
      : drawRack(ware.drawn.layout, ware.drawn.vessel, ware.drawn.rack, {
          title: name(ware.id),
          id,
          onCard: 12 + 6 * beside,
          measures: formats,
        });
  return { number: count(desk, ware), picture };
}

/** How to load: by the first ware that is drawn, and how the handles of the others differ. */
function steps({ formats, name }: CardDesk, wares: readonly Racked[]): string[] {
  const say = english.cards.rack;
  const drawn = wares.flatMap(({ id, drawn: one }) => (one === null ? [] : [{ id, ...one }]));
  const first = drawn[0];
  if (first === undefined) return say.steps.unknown;
  const { pattern } = first.layout;
  if (pattern === 'compartments' || pattern === 'on edge' || pattern === 'loose')
    return say.steps[pattern];
  const how = ({
    layout,
    vessel,
  }: (typeof drawn)[number]): { turn: string; rows: string; handled: boolean } => {
    const degrees = layout.angleDeg % 90;
    const rows = say.rows[layout.pattern as keyof typeof say.rows] ?? say.rows.grid;
    return {
      turn: degrees === 0 ? say.inRow.straight : say.inRow.at(formats.count(Math.round(degrees))),
      rows,
      handled: (vessel.handleMm ?? 0) > 0,
    };
  };
  const handled = drawn.filter((one) => how(one).handled);
  const ways = new Set(handled.map((one) => JSON.stringify(how(one))));
  const sentences =
    handled.length === 0
      ? [`${say.noHandles[pattern]}.`]
      : ways.size === 1
        ? [say.handles(how(handled[0]!).turn, how(handled[0]!).rows)]
        : handled.map((one) => say.handlesApart(name(one.id), how(one).turn, how(one).rows));
  return [...say.steps.rows, ...sentences];
}

function whenItGoes(desk: CardDesk): string[] {
  const { washing } = desk.scenario;
  const say = english.cards.rack;
  const sentences = [
    ...(washing.partLoadWait === null ? [] : [say.wait(spell(meanMs(washing.partLoadWait)))]),
    ...(washing.partLoadsEvery == null
      ? []
      : [say.partRounds(spell(meanMs(washing.partLoadsEvery)))]),
  ];
  return sentences.length === 0 ? [say.neverPart] : sentences;
}

/** Glass and china: in the house, or among the ware of a card. */
function hasBoth({ context }: CardDesk, among?: readonly Racked[]): boolean {
  const kinds = context.ware.flatMap(({ id, kind }) =>
    among === undefined || among.some((one) => one.id === id) ? [kind] : [],
  );
  return (
    kinds.includes('glass') &&
    kinds.some((kind) => kind === 'cup' || kind === 'saucer' || kind === 'plate')
  );
}

/** Racks a hundred pieces take, where shapes differ, and how near a wider piece is to losing some. */
function shapes({ formats, name }: CardDesk, wares: readonly Racked[]): string[] {
  const say = english.cards.rack;
  const held = wares.filter(({ pieces }) => pieces > 0);
  const differ = new Set(held.map(({ pieces }) => pieces)).size > 1;
  const per100 = held.map(({ id, pieces }) =>
    say.racksOf(name(id), formats.count(Math.ceil(100 / pieces))),
  );
  const wider = held
    .flatMap(({ id, pieces, drawn }) => {
      const next = drawn?.layout.loss ?? undefined;
      return next === undefined ? [] : [{ id, pieces, ...next }];
    })
    .toSorted((a, b) => a.changeMm - b.changeMm)
    .slice(0, MOST_WIDER)
    .map(({ id, pieces, changeMm, dimension, piecesThen }) => {
      const changed = changedMeasure(dimension, formats.length(changeMm), 'more');
      return piecesThen === 0
        ? say.outgrown(name(id), changed)
        : say.wider(name(id), changed, formats.count(pieces), formats.count(piecesThen));
    });
  return [...(differ ? [say.per100(per100.join(', '))] : []), ...wider];
}

/** Pieces of this rack at the wash at the tightest moment. */
function stuck({ answer, formats }: CardDesk, wares: readonly Racked[]): string {
  const { tightest, stock } = answer;
  const ids = wares.map(({ id }) => id);
  const places = tightest.places.flatMap((place, index) =>
    AT_THE_WASH.includes(place) ? [index] : [],
  );
  const waiting = tightest.pieces
    .filter(({ ware }) => ids.includes(ware))
    .reduce(
      (sum, { counts }) => sum + places.reduce((all, place) => all + (counts[place] ?? 0), 0),
      0,
    );
  const owned = stock
    .filter(({ ware }) => ids.includes(ware))
    .reduce((sum, { pieces }) => sum + pieces, 0);
  return waiting === 0
    ? ''
    : english.cards.rack.stuck(
        formats.clock(tightest.minute),
        formats.count(waiting),
        formats.count(owned),
      );
}

function heavy({ formats, scenario }: CardDesk, wares: readonly Racked[]): string {
  const masses = wares.flatMap(({ id, drawn }) =>
    drawn === null || scenario.ware[id]!.mass === undefined ? [] : [drawn.layout.loadedMassG],
  );
  return masses.length === 0 ? '' : english.cards.rack.heavy(formats.mass(Math.max(...masses)));
}
