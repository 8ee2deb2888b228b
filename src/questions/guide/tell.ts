/** The guide as blocks, for the terminal, the letter and print. */
import { heading, list, paragraphs, table, type Block } from '../../tell/block.js';
import { cautionsFor } from '../../tell/cautions.js';
import type { ReportContext } from '../../tell/context.js';
import { digitsOf, formatsFor, type Formats } from '../../tell/format.js';
import { inputName } from '../../tell/input-name.js';
import { shortName } from '../../tell/section-parts.js';
import { listed } from '../../tell/words.js';
import { answerWords } from '../../tell/words/answer.js';
import type { DrinkVessels, Guide, GuideChange, GuideHouse } from './answer.js';
import { BUSY_ENOUGH } from './grow.js';
import { housesTable, MOST_WIDE } from './houses-table.js';
import { say } from './words.js';

/** Drinks that a page still has room for; the menu's largest shares come first. */
const MOST_DRINKS = 12;
/** Assumed inputs that are named. */
const MOST_NAMED = 6;
/** Guests a rush who find no seat, more or fewer, that a line mentions. */
const WORTH_SAYING = 0.5;

/** @param alone the guide is handed out by itself, so the cautions stand on it; the letter has its own */
export function guideBlocks(
  guide: Guide,
  context: ReportContext,
  { alone }: { readonly alone: boolean },
): Block[] {
  const formats = formatsFor(context);
  const { file, houses } = guide;
  return [
    heading(say.heading),
    paragraphs(
      [say.lead(shortName(guide.scenario), formats.percent(guide.level, digitsOf(guide.level)))],
      'lead',
    ),
    paragraphs([
      say.pattern(
        formats.count(file.guestsAnHour),
        formats.count(file.seats),
        formats.decimal(file.inHouseASeat, 2),
        formats.minutes(file.stayMinutes),
      ),
    ]),
    ...alarms(guide, formats).map((text) => paragraphs([text], 'alarm')),
    ...houseTables(houses, formats),
    vesselsTable(guide.drinks, formats),
    list(
      guide.changes.map((change) => changeText(change, formats)),
      say.changes(formats.count(file.seats)),
    ),
    list(howMade(guide, formats), say.how),
    {
      ...list(
        (alone ? cautionsFor(context) : []).map(({ title, text }) => `${title}: ${text}`),
        say.cautions,
      ),
      only: 'html',
    },
    paragraphs([`${say.certifies} ${say.made(context.version, guide.seed)}`], 'small'),
  ];
}

const sharesOf = (houses: readonly GuideHouse[]): number[] => [
  ...new Set(houses.map(({ takeaway }) => takeaway)),
];

/** A page holds all houses side by side; a terminal is narrow, and has a few at a time, each share by itself. */
function houseTables(houses: readonly GuideHouse[], formats: Formats): Block[] {
  const shares = sharesOf(houses);
  if (shares.length === 1 && houses.length <= MOST_WIDE)
    return [housesTable(houses, formats, shares[0]!)];
  const narrow = shares.flatMap((share) => {
    const alike = houses.filter(({ takeaway }) => takeaway === share);
    return Array.from({ length: Math.ceil(alike.length / MOST_WIDE) }, (_, part) =>
      housesTable(alike.slice(part * MOST_WIDE, (part + 1) * MOST_WIDE), formats, share),
    );
  });
  return [
    { ...housesTable(houses, formats, shares.length === 1 ? shares[0]! : null), only: 'html' },
    ...narrow.map((block) => ({ ...block, only: 'text' as const })),
  ];
}

/** What a reader must know before the figures: a level not reached, work that piles up. */
function alarms({ houses }: Guide, formats: Formats): string[] {
  const oneShare = sharesOf(houses).length === 1;
  const where = (so: (house: GuideHouse) => boolean): string =>
    listed(
      houses
        .filter(so)
        .map(({ seats, takeaway }) =>
          (oneShare ? say.seats : say.seatsAway)(
            formats.count(seats),
            formats.percent(takeaway, 0),
          ),
        ),
    );
  const missed = where(({ warnings }) => warnings.some(({ code }) => code === 'promise-missed'));
  const over = where(({ overloads }) => overloads.length > 0);
  return [
    ...(missed === '' ? [] : [say.missed(missed)]),
    ...(over === '' ? [] : [say.overloaded(over)]),
  ];
}

function vesselsTable(drinks: readonly DrinkVessels[], formats: Formats): Block {
  const measures = (...parts: readonly (string | null)[]): string =>
    parts.filter((part) => part !== null).join(', ');
  const measured = <T>(value: T | null, text: (value: T) => string): string | null =>
    value === null ? null : text(value);
  return table({
    caption: say.vessels,
    columns: [
      { title: say.drink, as: 'words' },
      { title: say.share, as: 'figures', spare: true },
      { title: say.house, as: 'words' },
      { title: say.away, as: 'words' },
    ],
    rows: [
      ...drinks.slice(0, MOST_DRINKS).map(({ name, share, house, takeaway }) => [
        shortName(name),
        formats.percent(share, 0),
        house === null
          ? say.paperOnly
          : measures(
              shortName(house.name),
              measured(house.brimMl, formats.volume),
              measured(house.rimMm, (mm) => say.rim(formats.length(mm))),
              house.with.length === 0 ? null : say.with(listed(house.with.map(shortName))),
            ),
        takeaway === null
          ? say.paper
          : measures(
              shortName(takeaway.name),
              measured(takeaway.nominalMl, (ml) => say.sold(formats.volume(ml))),
              measured(takeaway.brimMl, (ml) => say.brim(formats.volume(ml))),
              measured(takeaway.rimMm, (mm) => say.rim(formats.length(mm))),
            ),
      ]),
      ...(drinks.length > MOST_DRINKS
        ? [[say.moreDrinks(formats.count(drinks.length - MOST_DRINKS)), '', '', '']]
        : []),
    ],
  });
}

function changeText(
  { name, pieces, piecesError, cost, turnedAway }: GuideChange,
  formats: Formats,
): string {
  const signed = (value: number, text: (value: number) => string): string =>
    `${value > 0 ? '+' : value < 0 ? '−' : ''}${text(Math.abs(value))}`;
  const off = piecesError === null ? '' : ` (± ${formats.count(Math.ceil(piecesError))})`;
  const guests = formats.decimal(Math.abs(turnedAway));
  const money = cost === 0 ? say.sameCost : signed(cost, formats.money);
  return say.changed(
    name,
    `${pieces === 0 ? say.unchanged : say.pieces(signed(pieces, formats.count), Math.abs(pieces) === 1)}${off}`,
    money,
    Math.abs(turnedAway) < WORTH_SAYING
      ? ''
      : (turnedAway > 0 ? say.moreAway : say.fewerAway)(guests),
  );
}

function howMade(guide: Guide, formats: Formats): string[] {
  const { file, houses, inputs, changeDays } = guide;
  const busy = (['makers', 'clearers', 'hands', 'machines'] as const).flatMap((what) => {
    const share = file.busy[what];
    return share === null ? [] : [`${say.busyPart[what]} ${formats.percent(share, 0)}`];
  });
  const names = [...new Set(guide.assumed.map((path) => inputLabel(path)))].slice(0, MOST_NAMED);
  const [assumed, all] = [formats.count(inputs.assumed), formats.count(inputs.all)];
  const range = (values: readonly number[]): string => {
    const [low, high] = [formats.count(Math.min(...values)), formats.count(Math.max(...values))];
    return low === high ? low : answerWords.to(low, high);
  };
  const takeaways = sharesOf(houses);
  return [
    say.same(busy.length === 0 ? '' : say.busy(listed(busy))),
    ...(file.busy.machines === null ? [] : [say.moreMachines(formats.percent(BUSY_ENOUGH, 0))]),
    ...(takeaways.some((share) => Math.abs(share - file.takeaway) > 1e-9) ? [say.takeaway] : []),
    say.days(
      range(houses.map(({ days }) => days)),
      range(houses.map(({ days }) => Math.max(days, 1000))),
      formats.count(changeDays),
    ),
    houses.some(({ costLow }) => costLow === null) ? say.noError : say.error,
    file.owns ? `${say.owned} ${say.spares}` : say.spares,
    names.length === 0
      ? say.noneAssumed(assumed, all)
      : say.assumed(assumed, all, names.join('; ')),
  ];
}

/** What an input is, whichever item or size it is of. */
const inputLabel = (path: string): string => inputName(path).split(':')[0]!.toLowerCase();
