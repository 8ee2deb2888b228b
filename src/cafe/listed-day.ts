/** Listed days: given guests in place of drawn ones, for recorded days and comparison free of noise. */
import { wholeMs } from '../engine/durations.js';
import type { Day } from './day.js';

/** A party of a listed day; times in minutes, drinks by the id they have on the menu. */
export interface ListedParty {
  readonly minute: number;
  readonly size: number;
  readonly staysIn: boolean;
  readonly dwellMinutes: number;
  readonly drinks: readonly { readonly drink: string; readonly makeMinutes: number }[];
  readonly seconds: readonly {
    readonly drink: string;
    readonly makeMinutes: number;
    readonly shareOfDwell: number;
  }[];
}

export interface ListedDay {
  readonly parties: readonly ListedParty[];
}

const MINUTE = 60_000;

/** Fill `into` with a listed day. Parties are taken in order of arrival; drinks must be on the menu. */
export function fillDay(
  listed: ListedDay,
  menu: readonly { readonly id: string }[],
  into: Day,
): void {
  const kinds = new Map(menu.map((drink, kind) => [drink.id, kind]));
  const kindOf = (id: string): number => {
    const kind = kinds.get(id);
    if (kind === undefined)
      throw new RangeError(
        `drink "${id}" is not on the menu; the menu has ${menu.map((drink) => drink.id).join(', ')}`,
      );
    return kind;
  };
  into.clear();
  const inOrder = listed.parties
    .map((party) => ({ party, arrivalMs: wholeMs(party.minute * MINUTE) }))
    .sort((a, b) => a.arrivalMs - b.arrivalMs);
  for (const { party, arrivalMs } of inOrder) {
    into.arrive(arrivalMs, party.size, party.staysIn, wholeMs(party.dwellMinutes * MINUTE));
    for (const { drink, makeMinutes } of party.drinks)
      into.order(kindOf(drink), wholeMs(makeMinutes * MINUTE));
    for (const { drink, makeMinutes, shareOfDwell } of party.seconds)
      into.orderSecond(kindOf(drink), wholeMs(makeMinutes * MINUTE), shareOfDwell);
  }
}
