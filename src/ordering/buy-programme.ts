/**
 * The cheapest buy as an integer programme, in the LP format that general solvers read.
 *
 * A ware is bought in one way: of the choices y (0/1), one an option, exactly one is 1. For ware, option,
 * round and price: cartons x, within the bounds of that price where it is chosen (z, 0/1) and 0
 * otherwise; what is bought by a round must reach the need. For supplier, round and freight step:
 * a choice u (0/1), cartons n between the bounds of the step, and mass m; or u of "free", with goods of
 * at least the free-freight value. The objective is the landed cost with tax and holding, in minor units.
 */
import { charges } from './costs/charges.js';
import { openOptions, type BuyNeed, type BuyTask } from './buy.js';
import { assignedName, purchasesOf, type Purchase } from './purchases.js';
import type { BuyLine, Supplier } from './supply.js';
import { Programme, type Term } from './programme.js';

export interface BuyProgramme {
  /** The programme in LP format. */
  readonly text: string;
  /** The same with parts of cartons and of choices allowed: its least cost is below any buy's. */
  readonly relaxed: string;
  readonly choices: number;
  /** The lines a solution means, from the values of its columns. */
  readonly linesOf: (value: (column: string) => number) => readonly BuyLine[];
}

/** Writes the programme of a task. Ware and suppliers are numbered, so their names cannot break the format. */
export function buyProgramme(task: BuyTask): BuyProgramme {
  const purchases = purchasesOf(task);
  const lp = new Programme();
  for (const purchase of purchases) {
    lp.cost(taxed(purchase.supplier, purchase.cartonMinor), purchase.cartons);
    lp.whole(purchase.cartons);
    lp.row(
      [
        [1, purchase.cartons],
        [-purchase.high, purchase.chosen],
      ],
      '<=',
      0,
    );
    lp.choice(purchase.chosen);
    if (purchase.low > 0)
      lp.row(
        [
          [1, purchase.cartons],
          [-purchase.low, purchase.chosen],
        ],
        '>=',
        0,
      );
  }
  task.needs.forEach((need, w) => {
    const open = openOptions(task, need);
    open.forEach((option) => lp.choice(assignedName(w, option)));
    lp.row(
      open.map((option): Term => [1, assignedName(w, option)]),
      '=',
      1,
    );
    for (const option of open)
      optionRows(
        lp,
        task,
        need,
        option,
        assignedName(w, option),
        purchases.filter((purchase) => purchase.ware === need.ware && purchase.option === option),
      );
  });
  for (let round = 0; round < task.rounds; round++)
    task.suppliers.forEach((supplier, s) =>
      consignment(
        lp,
        task,
        supplier,
        `${s}_${round}`,
        purchases.filter((purchase) => purchase.supplier === supplier && purchase.round === round),
      ),
    );
  return {
    text: lp.text(),
    relaxed: lp.text(false),
    choices: lp.choiceCount,
    linesOf: (value) =>
      task.needs.flatMap((need, w) =>
        openOptions(task, need)
          .filter((option) => value(assignedName(w, option)) > 0.5)
          .map((option) => {
            const own = purchases.filter(
              (purchase) => purchase.ware === need.ware && purchase.option === option,
            );
            const cartonsIn = (round: number): number =>
              own
                .filter((purchase) => purchase.round === round)
                .reduce((sum, purchase) => sum + Math.round(value(purchase.cartons)), 0);
            return {
              ware: need.ware,
              supplier: need.options[option]!.supplier,
              option,
              cartons: Array.from({ length: task.rounds }, (_, round) => cartonsIn(round)),
            };
          }),
      ),
  };
}

/** One option of a ware: what it must bring by each round, and what holding it costs. */
function optionRows(
  lp: Programme,
  task: BuyTask,
  need: BuyNeed,
  index: number,
  assigned: string,
  own: readonly Purchase[],
): void {
  const { pieces, spares, orderRounds } = need.options[index]!;
  for (const round of orderRounds) {
    const now = own.filter((purchase) => purchase.round === round);
    const priced = now.flatMap(({ chosen }): Term[] => (chosen === assigned ? [] : [[1, chosen]]));
    if (priced.length > 0) lp.row([...priced, [-1, assigned]], now[0]!.sure ? '=' : '<=', 0);
  }
  pieces.forEach((wanted, round) => {
    // What earlier rounds must have bought in any case need not be said again.
    if (wanted > (pieces[round - 1] ?? 0))
      lp.row(
        [
          ...own
            .filter((purchase) => purchase.round <= round)
            .map((purchase): Term => [1, purchase.cartons]),
          [-Math.ceil(wanted / own[0]!.cartonPieces), assigned],
        ],
        '>=',
        0,
      );
  });
  if (spares === null) return;
  for (const purchase of own)
    lp.cost(
      spares.pieceMinorARound * purchase.cartonPieces * (task.rounds - purchase.round),
      purchase.cartons,
    );
  lp.cost(
    spares.pieceMinorARound * task.rounds * (spares.start - (task.rounds * spares.lostARound) / 2),
    assigned,
  );
}

/** The freight, the other charges and the minimum order of what one supplier sends in one round. */
function consignment(
  lp: Programme,
  task: BuyTask,
  supplier: Supplier,
  place: string,
  own: readonly Purchase[],
): void {
  if (own.length === 0) return;
  const most = own.reduce((sum, purchase) => sum + purchase.high, 0);
  const mostMassG = own.reduce((sum, purchase) => sum + purchase.high * purchase.cartonMassG, 0);
  const byMass = supplier.freight.some(({ perKgMinor }) => perKgMinor > 0);
  const goods = own.map((purchase): Term => [purchase.cartonMinor, purchase.cartons]);
  const used: string[] = [];
  const counted: Term[] = own.map((purchase): Term => [1, purchase.cartons]);
  const weighed: Term[] = own.map((purchase): Term => [purchase.cartonMassG, purchase.cartons]);
  const mode = (
    name: string,
    low: number,
    high: number,
    rates: {
      readonly fixedMinor: number;
      readonly perCartonMinor: number;
      readonly perKgMinor: number;
    },
  ): string | null => {
    if (low > high) return null;
    const [use, cartons, mass] = [`u${place}_${name}`, `n${place}_${name}`, `m${place}_${name}`];
    used.push(use);
    lp.choice(use);
    lp.cost(taxed(supplier, rates.fixedMinor), use);
    lp.cost(taxed(supplier, rates.perCartonMinor), cartons);
    lp.row(
      [
        [1, cartons],
        [-high, use],
      ],
      '<=',
      0,
    );
    lp.row(
      [
        [1, cartons],
        [-low, use],
      ],
      '>=',
      0,
    );
    counted.push([-1, cartons]);
    if (!byMass) return use;
    lp.cost(taxed(supplier, rates.perKgMinor) / 1000, mass);
    lp.row(
      [
        [1, mass],
        [-mostMassG, use],
      ],
      '<=',
      0,
    );
    weighed.push([-1, mass]);
    return use;
  };
  supplier.freight.forEach((step, f) =>
    mode(
      `f${f}`,
      step.fromCartons,
      Math.min(most, (supplier.freight[f + 1]?.fromCartons ?? Infinity) - 1),
      step,
    ),
  );
  if (supplier.freeFromMinor !== null) {
    const free = mode('free', 1, most, { fixedMinor: 0, perCartonMinor: 0, perKgMinor: 0 });
    if (free !== null) lp.row([...goods, [-supplier.freeFromMinor, free]], '>=', 0);
  }
  charge(lp, task, supplier, place, own, used);
  lp.row(counted, '=', 0);
  if (byMass) lp.row(weighed, '=', 0);
  lp.row(
    used.map((use): Term => [1, use]),
    '<=',
    1,
  );
  // Whoever is sure to send a ware in this round sends something: said for each ware, it is what makes bounds close.
  for (const ware of new Set(own.map((purchase) => purchase.ware))) {
    const sure = new Set(
      own.filter((one) => one.ware === ware && one.sure).map(({ assigned }) => assigned),
    );
    if (sure.size > 0)
      lp.row(
        [
          ...[...sure].map((assigned): Term => [1, assigned]),
          ...used.map((use): Term => [-1, use]),
        ],
        '<=',
        0,
      );
  }
  if (supplier.minimumOrderMinor > 0)
    lp.row([...goods, ...used.map((use): Term => [-supplier.minimumOrderMinor, use])], '>=', 0);
}

/** Charges that are the same in every way of sending freight. */
function charge(
  lp: Programme,
  { handlingMinor }: BuyTask,
  supplier: Supplier,
  place: string,
  own: readonly Purchase[],
  used: readonly string[],
): void {
  for (const [c, { rates, taxed: bears }] of charges.entries()) {
    if (rates === null) continue;
    const { fixedMinor, perCartonMinor, perKgMinor, lot } = rates({ supplier, handlingMinor });
    const full = (minor: number): number => (bears ? taxed(supplier, minor) : minor);
    for (const use of used) lp.cost(full(fixedMinor), use);
    for (const { cartons, cartonMassG } of own)
      lp.cost(full(perCartonMinor + (perKgMinor * cartonMassG) / 1000), cartons);
    if (lot === undefined) continue;
    const begun = `l${place}_${c}`;
    lp.whole(begun);
    lp.cost(full(lot.minor), begun);
    lp.row([...own.map(({ cartons }): Term => [-1, cartons]), [lot.cartons, begun]], '>=', 0);
  }
}

const taxed = (supplier: Supplier, minor: number): number => minor * (1 + supplier.taxRate);
