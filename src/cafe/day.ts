/**
 * A day of guests, drawn or listed: who comes when, what they drink, how long they stay.
 *
 * Columns in typed arrays that are kept from day to day and only ever grow. A party's drinks stand
 * together, its first round before its second drinks.
 */
export class Day {
  parties = 0;
  drinks = 0;

  /** By party: moment of arrival and dwell, ms; guests; 1 if it stays in. */
  arrivalMs = new Float64Array(256);
  dwellMs = new Float64Array(256);
  size = new Int32Array(256);
  staysIn = new Uint8Array(256);
  /** By party: its first drink, and its first second drink; its drinks end where the next party's begin. */
  firstDrink = new Int32Array(257);
  firstSecond = new Int32Array(257);

  /** By drink: index on the menu, making time in ms, its party, and for second drinks the share of the dwell at which it is ordered. */
  kind = new Int32Array(512);
  makeMs = new Float64Array(512);
  party = new Int32Array(512);
  shareOfDwell = new Float64Array(512);

  clear(): void {
    this.parties = 0;
    this.drinks = 0;
  }

  /** Add a party after the last; its drinks follow with `order` and `orderSecond`. */
  arrive(arrivalMs: number, size: number, staysIn: boolean, dwellMs: number): void {
    const party = this.parties;
    if (party === this.arrivalMs.length) this.growParties();
    this.arrivalMs[party] = arrivalMs;
    this.size[party] = size;
    this.staysIn[party] = staysIn ? 1 : 0;
    this.dwellMs[party] = dwellMs;
    this.firstDrink[party] = this.drinks;
    this.firstSecond[party] = this.drinks;
    this.parties = party + 1;
    this.firstDrink[party + 1] = this.drinks;
  }

  /** A first-round drink of the party added last. */
  order(kind: number, makeMs: number): void {
    this.addDrink(kind, makeMs, 0);
    this.firstSecond[this.parties - 1] = this.drinks;
  }

  /** A second drink of the party added last, ordered at a share of its dwell. */
  orderSecond(kind: number, makeMs: number, shareOfDwell: number): void {
    this.addDrink(kind, makeMs, shareOfDwell);
  }

  private addDrink(kind: number, makeMs: number, shareOfDwell: number): void {
    const drink = this.drinks;
    if (drink === this.kind.length) this.growDrinks();
    this.kind[drink] = kind;
    this.makeMs[drink] = makeMs;
    this.shareOfDwell[drink] = shareOfDwell;
    this.party[drink] = this.parties - 1;
    this.drinks = drink + 1;
    this.firstDrink[this.parties] = drink + 1;
  }

  /** Make room for twice as many parties. */
  growParties(): void {
    const to = this.arrivalMs.length * 2;
    this.arrivalMs = grown(this.arrivalMs, new Float64Array(to));
    this.dwellMs = grown(this.dwellMs, new Float64Array(to));
    this.size = grown(this.size, new Int32Array(to));
    this.staysIn = grown(this.staysIn, new Uint8Array(to));
    this.firstDrink = grown(this.firstDrink, new Int32Array(to + 1));
    this.firstSecond = grown(this.firstSecond, new Int32Array(to + 1));
  }

  /** Make room for so many drinks in all. */
  makeRoomForDrinks(drinks: number): void {
    while (drinks > this.kind.length) this.growDrinks();
  }

  private growDrinks(): void {
    const to = this.kind.length * 2;
    this.kind = grown(this.kind, new Int32Array(to));
    this.makeMs = grown(this.makeMs, new Float64Array(to));
    this.party = grown(this.party, new Int32Array(to));
    this.shareOfDwell = grown(this.shareOfDwell, new Float64Array(to));
  }
}

/** `larger` with the contents of `from` at its start. */
export function grown<T extends Float64Array | Int32Array | Uint8Array>(from: T, larger: T): T {
  larger.set(from);
  return larger;
}
