/**
 * The bench: dirty pieces go into racks, in the order in which they came.
 *
 * Racking takes no time. Each family has at most one open rack; a ware takes 1/perRack of a rack,
 * counted in whole units of the least common multiple, so that "full" is exact. The rack is full when
 * the family's smallest piece no longer fits, and a piece that does not fit closes it. With no rack
 * free, pieces lie loose and are passed over.
 */
import { grown } from './day.js';
import type { Ledger } from './ledger.js';
import type { CafeModel } from './model.js';
import { BENCH, RACKED } from './places.js';

const NONE = -1;
const AS_MANY_AS_NEEDED = 1_000_000_000;

/** Who is notified of racks. */
export interface RackTaker {
  /** A rack has just become full, or was closed by a piece that did not fit. */
  rackClosed(rack: number): void;
  /** A rack has taken its first piece and stays open. */
  rackOpened(rack: number): void;
}

export class Bench {
  readonly wareCount: number;
  /** By family: its open rack, or -1. */
  readonly openRack: Int32Array;
  readonly familyOf: Int32Array;
  readonly kindOf: Int32Array;
  /** By family: units of a full rack. */
  readonly fullUnits: Float64Array;
  /** By rack: family, units used, when its oldest piece reached the bench, that piece's number on the bench. */
  family = new Int32Array(32);
  used = new Float64Array(32);
  since = new Float64Array(32);
  firstPiece = new Float64Array(32);
  /** By rack and ware: pieces[rack × wareCount + ware]. */
  pieces: Int32Array;
  /** By kind: pieces loose for want of a rack. */
  readonly looseOfKind: Int32Array;
  /** By kind: racks in use now, and the most ever. */
  readonly inUse: Int32Array;
  readonly mostInUse: Int32Array;

  private readonly units: Float64Array;
  private readonly smallest: Float64Array;
  private readonly owned: Int32Array;
  private racks = 0;
  private freeRacks: Int32Array = new Int32Array(32);
  private freeCount = 0;
  /** Pieces loose on the bench, in order, from `looseFrom` up to `looseTo`: ware, moment of reaching the bench, number. */
  private looseWare = new Int32Array(64);
  private looseSince = new Float64Array(64);
  private looseNumber = new Float64Array(64);
  private looseFrom = 0;
  private looseTo = 0;
  private arrived = 0;

  constructor(
    model: CafeModel,
    private readonly ledger: Ledger,
    private readonly next: RackTaker,
  ) {
    this.wareCount = model.ware.length;
    this.pieces = new Int32Array(32 * this.wareCount);
    this.familyOf = Int32Array.from(model.ware, (ware) => ware.family);
    this.kindOf = Int32Array.from(model.families, (family) => family.rackKind);
    this.openRack = new Int32Array(model.families.length);
    this.looseOfKind = new Int32Array(model.rackKinds.length);
    this.inUse = new Int32Array(model.rackKinds.length);
    this.mostInUse = new Int32Array(model.rackKinds.length);
    this.owned = Int32Array.from(model.rackKinds, (kind) => kind.owned ?? AS_MANY_AS_NEEDED);
    this.fullUnits = new Float64Array(model.families.length).fill(1);
    for (const ware of model.ware)
      this.fullUnits[ware.family] = leastCommonMultiple(this.fullUnits[ware.family]!, ware.perRack);
    this.units = Float64Array.from(
      model.ware,
      (ware) => this.fullUnits[ware.family]! / ware.perRack,
    );
    this.smallest = new Float64Array(model.families.length).fill(Infinity);
    model.ware.forEach((ware, index) => {
      this.smallest[ware.family] = Math.min(this.smallest[ware.family]!, this.units[index]!);
    });
  }

  open(): void {
    this.openRack.fill(NONE);
    this.looseOfKind.fill(0);
    this.inUse.fill(0);
    this.mostInUse.fill(0);
    this.racks = this.freeCount = this.looseFrom = this.looseTo = this.arrived = 0;
    this.pieces.fill(0);
  }

  /** A piece reaches the bench now. */
  receive(ware: number): void {
    const number = this.arrived;
    this.arrived += 1;
    if (this.rack(ware, this.ledger.now, number)) return;
    if (this.looseTo === this.looseWare.length) this.makeRoomForLoose();
    const at = this.looseTo;
    this.looseTo = at + 1;
    this.looseWare[at] = ware;
    this.looseSince[at] = this.ledger.now;
    this.looseNumber[at] = number;
    const kind = this.kindOf[this.familyOf[ware]!]!;
    this.looseOfKind[kind] = this.looseOfKind[kind]! + 1;
  }

  /** A rack comes back empty. */
  giveBack(rack: number): void {
    const kind = this.kindOf[this.family[rack]!]!;
    this.inUse[kind] = this.inUse[kind]! - 1;
    if (this.freeCount === this.freeRacks.length)
      this.freeRacks = grown(this.freeRacks, new Int32Array(this.freeCount * 2));
    this.freeRacks[this.freeCount] = rack;
    this.freeCount += 1;
  }

  /** Racks have come free: loose pieces go into them in the order of the bench. */
  rackLoose(): void {
    if (this.looseFrom === this.looseTo) return;
    let kept = this.looseFrom;
    let at = this.looseFrom;
    for (; at < this.looseTo; at += 1) {
      const ware = this.looseWare[at]!;
      if (this.rack(ware, this.looseSince[at]!, this.looseNumber[at]!)) {
        const kind = this.kindOf[this.familyOf[ware]!]!;
        this.looseOfKind[kind] = this.looseOfKind[kind]! - 1;
      } else {
        this.looseWare[kept] = ware;
        this.looseSince[kept] = this.looseSince[at]!;
        this.looseNumber[kept] = this.looseNumber[at]!;
        kept += 1;
        if (!this.someCanGo()) {
          at += 1;
          break;
        }
      }
    }
    // Those passed over stay before those not looked at.
    const to = at - (kept - this.looseFrom);
    for (const column of [this.looseWare, this.looseSince, this.looseNumber])
      column.copyWithin(to, this.looseFrom, kept);
    this.looseFrom = to;
  }

  /** Whether any loose piece may find a rack; where hundreds of thousands lie, looking at each again and again would take hours. */
  private someCanGo(): boolean {
    for (let family = 0; family < this.openRack.length; family += 1) {
      const kind = this.kindOf[family]!;
      if (this.looseOfKind[kind] === 0) continue;
      if (this.openRack[family] !== NONE || this.inUse[kind]! < this.owned[kind]!) return true;
    }
    return false;
  }

  /** Pieces that went into racks leave room at the front; where there is little, the lists grow. */
  private makeRoomForLoose(): void {
    const { looseFrom, looseTo } = this;
    if (looseFrom < looseTo / 2) {
      this.looseWare = grown(this.looseWare, new Int32Array(looseTo * 2));
      this.looseSince = grown(this.looseSince, new Float64Array(looseTo * 2));
      this.looseNumber = grown(this.looseNumber, new Float64Array(looseTo * 2));
      return;
    }
    for (const column of [this.looseWare, this.looseSince, this.looseNumber])
      column.copyWithin(0, looseFrom, looseTo);
    this.looseFrom = 0;
    this.looseTo = looseTo - looseFrom;
  }

  /** Close a part rack because it goes into a machine. */
  takeOpen(rack: number): void {
    this.openRack[this.family[rack]!] = NONE;
  }

  /** Above 0 when rack `a` is fuller than rack `b`, below 0 when less full, 0 when equally full; exact. */
  fuller(a: number, b: number): number {
    return (
      this.used[a]! * this.fullUnits[this.family[b]!]! -
      this.used[b]! * this.fullUnits[this.family[a]!]!
    );
  }

  /** Share of a rack that is used, 0..1. */
  fill(rack: number): number {
    return this.used[rack]! / this.fullUnits[this.family[rack]!]!;
  }

  private rack(ware: number, since: number, number: number): boolean {
    const family = this.familyOf[ware]!;
    const need = this.units[ware]!;
    const full = this.fullUnits[family]!;
    let rack = this.openRack[family]!;
    if (rack !== NONE && this.used[rack]! + need > full) {
      this.openRack[family] = NONE;
      this.next.rackClosed(rack);
      rack = NONE;
    }
    if (rack === NONE) {
      rack = this.openNew(family, since, number);
      if (rack === NONE) return false;
    }
    const used = (this.used[rack] = this.used[rack]! + need);
    const cell = rack * this.wareCount + ware;
    this.pieces[cell] = this.pieces[cell]! + 1;
    this.ledger.move(ware, BENCH, RACKED, 1);
    this.ledger.observer?.racked(rack, ware);
    if (used + this.smallest[family]! > full) {
      this.openRack[family] = NONE;
      this.next.rackClosed(rack);
    } else if (used === need) {
      this.next.rackOpened(rack);
    }
    return true;
  }

  private openNew(family: number, since: number, number: number): number {
    const kind = this.kindOf[family]!;
    const inUse = this.inUse[kind]!;
    if (inUse >= this.owned[kind]!) return NONE;
    this.inUse[kind] = inUse + 1;
    if (inUse + 1 > this.mostInUse[kind]!) this.mostInUse[kind] = inUse + 1;
    let rack: number;
    if (this.freeCount > 0) {
      this.freeCount -= 1;
      rack = this.freeRacks[this.freeCount]!;
    } else {
      rack = this.racks;
      this.racks += 1;
      if (rack === this.family.length) this.growRacks();
    }
    this.openRack[family] = rack;
    this.family[rack] = family;
    this.used[rack] = 0;
    this.since[rack] = since;
    this.firstPiece[rack] = number;
    return rack;
  }

  private growRacks(): void {
    const to = this.family.length * 2;
    this.family = grown(this.family, new Int32Array(to));
    this.used = grown(this.used, new Float64Array(to));
    this.since = grown(this.since, new Float64Array(to));
    this.firstPiece = grown(this.firstPiece, new Float64Array(to));
    this.pieces = grown(this.pieces, new Int32Array(to * this.wareCount));
  }
}

/** Least common multiple of two whole numbers, exact up to 2⁵³. */
export function leastCommonMultiple(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return (a / x) * b;
}
