/** Seats: who sits down, who waits strictly in line, who goes away. */
import { EVENT } from './events.js';
import type { Flow } from './flow.js';
import type { SeatsModel } from './model.js';
import { grown } from './day.js';
import { SeatQuarters } from './seat-quarters.js';

export class Seats {
  free = 0;
  /** Parties that left for want of seats, and those that took away instead. */
  partiesLeft = 0;
  partiesTakeawayInstead = 0;
  guestsSeated = 0;
  guestsLeft = 0;
  guestsTakeawayInstead = 0;
  /** Guests on seats now. */
  guestsInHouse = 0;
  /** Parties waiting in line. */
  waiting = 0;
  /** Seat-milliseconds taken between opening and closing, as far as given back. */
  private takenMs = 0;

  /** Null where seats are unlimited. */
  private readonly quarters: SeatQuarters | null;

  private line = new Int32Array(64);
  private head = 0;
  private tail = 0;
  /** By party: 1 while it stands in line. */
  private inLine = new Uint8Array(256);
  private readonly size: number | null;

  constructor(
    private readonly rules: SeatsModel,
    private readonly closingMs: number,
    private readonly flow: Flow,
  ) {
    this.size = rules.count;
    this.quarters = rules.count === null ? null : new SeatQuarters(closingMs);
  }

  open(): void {
    this.free = this.size ?? Number.MAX_SAFE_INTEGER;
    this.partiesLeft = this.partiesTakeawayInstead = 0;
    this.guestsSeated = this.guestsLeft = this.guestsTakeawayInstead = 0;
    this.guestsInHouse = this.waiting = this.head = this.tail = 0;
    this.takenMs = 0;
    this.quarters?.open();
    const { parties } = this.flow.day;
    if (parties > this.inLine.length) this.inLine = new Uint8Array(parties * 2);
    else this.inLine.fill(0, 0, parties);
  }

  /** A party that wants to stay in is at the door. */
  arrive(party: number): void {
    const guests = this.flow.day.size[party]!;
    if (this.waiting === 0 && guests <= this.free) {
      this.sit(party, guests);
    } else if (this.size !== null && guests > this.size) {
      this.turnAway(guests);
    } else if (this.rules.whenFull === 'wait') {
      this.joinLine(party);
    } else if (this.rules.whenFull === 'takeaway') {
      this.partiesTakeawayInstead += 1;
      this.guestsTakeawayInstead += guests;
      this.flow.takesAway(party);
    } else {
      this.turnAway(guests);
    }
  }

  /** Seats have come free: those at the head of the line sit down while they fit. */
  giveBack(guests: number): void {
    this.free += guests;
    this.guestsInHouse -= guests;
    this.takenMs += guests * Math.min(this.flow.now, this.closingMs);
    this.quarters?.change(this.flow.now, -guests);
    this.seatThoseInLine();
  }

  /** A party in line has waited as long as it would. */
  giveUp(party: number): void {
    if (this.inLine[party] === 0) return;
    this.inLine[party] = 0;
    this.waiting -= 1;
    this.turnAway(this.flow.day.size[party]!);
    this.seatThoseInLine();
  }

  /** Seat-milliseconds taken before closing, parties still seated included. */
  seatMs(): number {
    return this.takenMs + this.guestsInHouse * Math.min(this.flow.now, this.closingMs);
  }

  /** Share of the seats held in the fullest quarter hour, in thousandths; call it once the day is over. */
  fullestPermille(): number {
    return this.quarters === null ? 0 : Math.round((1000 * this.quarters.fullest()) / this.size!);
  }

  private seatThoseInLine(): void {
    while (this.waiting > 0) {
      const party = this.line[this.head]!;
      if (this.inLine[party] === 1) {
        const guests = this.flow.day.size[party]!;
        if (guests > this.free) return;
        this.inLine[party] = 0;
        this.waiting -= 1;
        this.head += 1;
        this.sit(party, guests);
      } else {
        this.head += 1;
      }
    }
  }

  private sit(party: number, guests: number): void {
    this.free -= guests;
    this.guestsInHouse += guests;
    this.guestsSeated += guests;
    this.takenMs -= guests * Math.min(this.flow.now, this.closingMs);
    this.quarters?.change(this.flow.now, guests);
    this.flow.seated(party);
  }

  private turnAway(guests: number): void {
    this.partiesLeft += 1;
    this.guestsLeft += guests;
  }

  private joinLine(party: number): void {
    if (this.tail === this.line.length) this.line = grown(this.line, new Int32Array(this.tail * 2));
    this.line[this.tail] = party;
    this.tail += 1;
    this.inLine[party] = 1;
    this.waiting += 1;
    this.flow.calendar.schedule(this.flow.now + this.rules.waitLimitMs, EVENT.seatWait, party);
  }
}
