/** The clearing rule: when this house clears, in how many pieces, and what it costs when rounds slip. */
import { english } from '../../tell/words.js';
import { meanMs } from '../../engine/durations.js';
import { cardOf, head, list, para, spell, type Card, type CardDesk } from './card.js';

/** Places by the names of the answer. */
const ON_THE_TABLE = 'on the table, dirty';
const CARRIED = 'carried';
const ROUNDS_SHOWN = 4;
const MINUTE_MS = 60_000;
/** Guests turned away more, a rush, that are worth a sentence. */
const TURNED_AWAY_TOLD = 0.5;

export function clearingCard(desk: CardDesk): readonly Card[] {
  const { scenario, answer, name } = desk;
  const say = english.cards.clearing;
  const { clearing, washing, seats } = scenario;
  const rule =
    clearing === 'atOnce'
      ? [para(say.atOnce, 'card-huge'), para(say.atOnceText, 'card-strong')]
      : [
          para(say.every(spell(meanMs(clearing.every))), 'card-huge'),
          para(rounds(desk, meanMs(clearing.every)), 'card-strong'),
        ];
  const body = `${rule.join('\n')}
${list([...trips(desk), ...(clearing === 'atOnce' ? [] : [say.order]), ...(washing.hands === 'clearers' ? [say.washer] : []), say.first(name(answer.tightest.ware)), ...(seats.heldUntilCleared ? [say.held] : []), say.carry, say.chips], true)}
${para(clearing === 'atOnce' ? '' : waits(desk))}
${slip(desk)}
${para([english.cautions.scalds.text, english.cautions.chipped.text].join(' '), 'card-caution')}`;
  return [cardOf(desk, 'clearing', say.title, body, 'card-large')];
}

function rounds({ formats }: CardDesk, everyMs: number): string {
  return english.cards.clearing.rounds(
    Array.from({ length: ROUNDS_SHOWN }, (_, index) =>
      formats.clock(((index + 1) * everyMs) / MINUTE_MS),
    ).join(', '),
  );
}

function trips(desk: CardDesk): string[] {
  const { scenario, formats } = desk;
  const say = english.cards.clearing;
  const { clearing } = scenario;
  if (clearing === 'atOnce') return [];
  const time = spell(meanMs(clearing.trip));
  return [
    clearing.clearers === null
      ? say.clearersUnlimited
      : say.clearers(formats.count(clearing.clearers), clearing.clearers === 1),
    clearing.tripPieces === null
      ? say.tripUnlimited(time)
      : say.trip(formats.count(clearing.tripPieces), time),
  ];
}

/** Mean minutes on the table and on the way, over all uses. */
function waits({ answer, formats }: CardDesk): string {
  const all = answer.uses.reduce((sum, { aDay }) => sum + aDay, 0);
  const meanAt = (place: string): number => {
    const index = answer.tightest.places.indexOf(place);
    return (
      answer.minutes.loop.reduce(
        (sum, { ware, places }) =>
          sum + (places[index] ?? 0) * (answer.uses.find((one) => one.ware === ware)?.aDay ?? 0),
        0,
      ) / all
    );
  };
  return all === 0
    ? ''
    : english.cards.clearing.waits(
        formats.minutes(meanAt(ON_THE_TABLE)),
        formats.minutes(meanAt(CARRIED)),
      );
}

function slip(desk: CardDesk): string {
  const { slower, formats, name } = desk;
  if (slower == null) return '';
  const say = english.cards.clearing;
  const to = spell(slower.everyMinutes * MINUTE_MS);
  const from = slower.insteadOfMinutes === null ? null : spell(slower.insteadOfMinutes * MINUTE_MS);
  const days = formats.count(slower.days);
  const most = slower.ware
    .filter(({ extraPieces }) => extraPieces > 0)
    .toSorted((a, b) => b.extraPieces - a.extraPieces)
    .slice(0, 3);
  return [
    head(say.slipTitle),
    para(
      slower.extraPieces > 0
        ? say.slip(
            to,
            from,
            days,
            formats.count(slower.extraPieces),
            formats.money(slower.extraCost),
          )
        : say.slipNothing(to, from, days),
      'card-strong',
    ),
    para(
      slower.extraPieces > 0 && most.length > 0
        ? say.slipMost(
            most
              .map(({ ware, extraPieces }) =>
                say.slipPieces(formats.count(extraPieces), name(ware)),
              )
              .join(', '),
          )
        : '',
    ),
    para(
      slower.extraTurnedAway > TURNED_AWAY_TOLD
        ? say.slipTurned(formats.decimal(slower.extraTurnedAway))
        : '',
    ),
  ].join('\n');
}
