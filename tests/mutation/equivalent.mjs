// Changes that alter no answer, each with its reason; named by file and line of code, so that a changed line is judged again, and
// by what is changed in it ('0 no. 2': the second 0 of the line).
const ROOM = 'room to begin with, or more of it than is needed at once; it grows when needed';
const OPENED = 'set anew when a day opens, before anything reads it';
const bySource = {
  'src/sizing/size-stock.ts': [
    [
      'while (error >= STEADY && days < cap) {',
      ['>='],
      'an error of the bootstrap would have to be the bound itself to its last bit',
    ],
  ],
  'src/sizing/stock-for-kinds.ts': [
    [
      'Math.max(',
      ['max'],
      'the least of all kinds instead of the most is a lower floor: more days are kept and lower stocks tried, none of which carries the kind that needs more; halving ends where it did',
    ],
  ],
  'src/cafe/fifo.ts': [['private items = new Int32Array(64);', ['64'], ROOM]],
  'src/cafe/floor.ts': [['private number = 0;', ['0'], OPENED]],
  'src/cafe/polishing.ts': [['handMs = 0;', ['0'], OPENED]],
  'src/cafe/seat-quarters.ts': [
    ['if (this.taken > 0) {', ['>'], 'while no seat is taken, no seats times so long is added'],
  ],
  'src/statistics/log-gamma.ts': [
    [
      'const TERMS = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360_360, 1 / 156];',
      ['360_360'],
      'the term is at most 10⁻¹⁶ from 16 on, so that a part in 360,000 of it lies seven digits below the last one of the sum',
    ],
  ],
  'src/sizing/reduced-days.ts': [
    [
      'for (let row = 0; row < weight.length; row++)',
      ['<'],
      'of a row beyond the last no peak is known, and none is above the floor',
    ],
  ],
  'src/sizing/least-cost-stock.ts': [
    [
      'this.#unitCost[0] ?? 1,',
      ['1'],
      'read where there is no ware at all, and then there is no stock to search for',
    ],
  ],
  'src/cafe/washing/rules/low-shelf.ts': [
    [
      'for (let ware = 0; ware < wareCount; ware += 1) {',
      ['<'],
      'of a ware beyond the last the shelf is unknown, and nothing is at most what is unknown',
    ],
  ],
  'src/sizing/stock-box.ts': [
    [
      'for (let w = 0; w < ware; w++) {',
      ['<'],
      'of the second loop over ware: of one beyond the last nothing is known, and no comparison with it holds; the first would end in an error',
    ],
  ],
  'src/cafe/washing/washing.ts': [
    ['ownRacks = 0;', ['0'], OPENED],
    ['handlingMs = 0;', ['0'], OPENED],
    ['fillPermille = 0;', ['0'], OPENED],
    [
      'if (moment !== NEVER) this.flow.calendar.schedule(moment, EVENT.partLoadWait, 0);',
      ['0'],
      'a wait that is over has no number: nothing reads it',
    ],
  ],
  'src/cafe/washing/machines.ts': [
    [
      'busy: false,',
      ['false'],
      'a machine is made with the house, and then set anew when a day opens, or as it is first needed, and then it starts in the same call',
    ],
  ],
  'src/cafe/washing/load-rule.ts': [
    ['export const NEVER = -1;', ['1'], 'any moment before the opening says so'],
  ],
  'src/cafe/turns.ts': [
    [
      'const EVENTS_A_TURN = 50_000;',
      ['50_000'],
      'how long a thread works before it looks about; wherever the pauses fall the days are the same, as a test holds',
    ],
  ],
  'src/cafe/visits.ts': [
    [
      'if (day.parties > this.seatedParty.length) this.seatedParty = new Uint8Array(day.parties * 2);',
      ['>', '2'],
      ROOM,
    ],
  ],
  'src/cafe/ledger.ts': [
    [
      'for (let ware = 0; ware < this.ware; ware += 1) {',
      ['<'],
      'one ware beyond the last: read as undefined, written beyond the end of the arrays, which JavaScript ignores',
    ],
  ],
  'src/cafe/rush.ts': [
    [
      'const kinds = part.days === 0 ? 0 : part.rackPeaks.length / part.days;',
      ['0 no. 2'],
      'a part without days has no rack peaks: it does not matter where none are put',
    ],
  ],
  'src/cafe/run-days.ts': [
    [
      'for (let left = events; this.over < this.task.days && left > 0;) {',
      ['>'],
      'one event more in a turn; wherever the pauses fall the days are the same, as a test holds',
    ],
    [
      'for (let ware = 0; ware < wares; ware += 1) {',
      ['<'],
      'of a ware beyond the last a 0 is written for the next day, which is written after it, or beyond the end of the arrays, which JavaScript ignores',
    ],
  ],
  'src/statistics/beta-quantile.ts': [
    [
      'if (p === 0 || p === 1) return p;',
      ['0'],
      'without it halving goes on down to 0 itself, which is the answer',
    ],
  ],
  'src/statistics/quantile-interval-ranks.ts': [
    [
      'const above = largest(n, (fromTop) => binomialAtMost(fromTop - 1, n, 1 - p) <= tail);',
      ['<='],
      'a chance, which is known but for its last digits, would have to be the tail to the last bit',
    ],
    [
      'const below = largest(n, (rank) => binomialAtMost(rank - 1, n, p) <= tail);',
      ['<='],
      'as above',
    ],
  ],
  'src/statistics/regularised-incomplete-beta.ts': [
    [
      'const rounds = 200 + 20 * Math.sqrt(Math.max(a, b));',
      ['200', 'max'],
      'a guard that is not reached: of shapes from 10⁻³⁰⁰ to 10¹⁵, at and about the mean, none took more than 92 rounds, and 200 are allowed at least',
    ],
  ],
  'src/sizing/lagrangian-bounds.ts': [
    [
      'if (slope > 0) below = price;',
      ['>'],
      'where the slope is 0 the search has ended in the line before',
    ],
    [
      'if (first[row + 1] - first[row] > 1) contested.push(row);',
      ['-', '>'],
      'a day of one ware or none has no shares to move: whichever of them run out, it is passed over',
    ],
    [
      'if (short === 0 || short === to - from) continue;',
      ['-'],
      'where all ware run out, all shares grow alike and are scaled back to what they were, but for the last digit',
    ],
    [
      'for (let w = 0; w < box.rows.length; w++) {',
      ['<'],
      'of a ware beyond the last there are no stocks to look at, and what is written of it lies beyond the end of the arrays, which JavaScript ignores',
    ],
    [
      'let highest = -1;',
      ['1'],
      'it stands where no number of pieces is left, and any number below 0 says so',
    ],
    [
      'let chosen = end - 1;',
      ['-'],
      'the first stock looked at costs less than without end, so it is set before it is read',
    ],
    [
      'for (let row = 0; row < rows; row++) {',
      ['<'],
      'one row beyond the last: it has no entries, so its shares are none to scale and it is not contested',
    ],
    [
      'this.#level = new Int32Array(0);',
      ['0'],
      'it is made anew for any box that has a day left to save, and others are answered without a bound',
    ],
    [
      'if (price < 1e-9 * start) break;',
      ['<'],
      'a price halved again and again would have to be just one part in 10⁹ of the first, to the last bit',
    ],
  ],
  'src/sizing/assured-stock.ts': [
    [
      'const peaks = await stores.days(0, days, tries === 1 ? tested : 0);',
      ['0', '1'],
      'how many days are run ahead; the same days are handed out whoever ran them',
    ],
  ],
  'src/sizing/peaks.ts': [
    [
      'for (let i = 0; i < days.length; i++) {',
      ['<'],
      'one day beyond the last is written beyond the end of the array, which JavaScript ignores',
    ],
  ],
  'src/sizing/repaired-stock.ts': [
    [
      'let cheapest = -1;',
      ['1'],
      'more days are missed than may be, so there is one, its price is finite, and this is set before it is read',
    ],
    ['for (const row of missed) isMissed[row] = 1;', ['1'], 'any number but 0 says so'],
    ['isMissed[row] = 1;', ['1'], 'any number but 0 says so'],
    [
      'let best = { ware: -1, level: 0, extra: 0, bargain: 0 };',
      ['1', '0 no. 1', '0 no. 2'],
      'any number below 0 says that no ware was found, and what would be done with it is then not read',
    ],
  ],
  'src/statistics/exact-binomial-test.ts': [
    [
      '(count) => binomialProbability(count, trials, p) <= limit,',
      ['<='],
      'a chance would have to be one part in 10⁷ above another to the last bit; where both are 0, what is added is 0 too',
    ],
    [
      '(count) => binomialProbability(trials - count, trials, p) <= limit,',
      ['<='],
      'a chance would have to be one part in 10⁷ above another to the last bit; where both are 0, what is added is 0 too',
    ],
  ],
  'src/cafe/bench.ts': [
    ['this.freeRacks = grown(this.freeRacks, new Int32Array(this.freeCount * 2));', ['2'], ROOM],
    ['if (looseFrom < looseTo / 2) {', ['2'], ROOM],
    ['private looseSince = new Float64Array(64);', ['64'], ROOM],
    ['private freeCount = 0;', ['0'], OPENED],
    ['private looseTo = 0;', ['0'], OPENED],
    [
      'if (inUse + 1 > this.mostInUse[kind]!) this.mostInUse[kind] = inUse + 1;',
      ['1'],
      'with + 2 on the left alone the most is written once more with the value that it has',
    ],
    ['private arrived = 0;', ['0'], OPENED],
    ['const to = this.family.length * 2;', ['2'], ROOM],
    [
      'for (let family = 0; family < this.openRack.length; family += 1) {',
      ['<'],
      'it then always says that some loose piece may go: the rest are looked at in vain, and where none can go, looking changes nothing',
    ],
  ],
  'src/cafe/clearing.ts': [
    ['if (parties > this.dirty.length) this.dirty = new Int32Array(parties * 2);', ['>'], ROOM],
    ['const NONE = -1;', ['1'], 'any number below 0 is that of no clearer'],
    [
      'this.flow.recur(this.rounds!.next(this.flow.now), EVENT.round, 0);',
      ['0'],
      'a round is of no party and no rack: its number is not read',
    ],
    ['private head = 0;', ['0'], OPENED],
    ['private tail = 0;', ['0'], OPENED],
    [
      'this.carrying.push({ startedAt: 0, pieces: new Int32Array(64), count: 0, parties: [] }) - 1;',
      ['0'],
      'both are set as the clearer sets out, in the same call',
    ],
    ['if (parties > this.dirty.length) this.dirty = new Int32Array(parties * 2);', ['2'], ROOM],
    [
      'if (this.rounds !== null) this.flow.recur(this.rounds.first(day), EVENT.round, 0);',
      ['0'],
      'a round is of no party and no rack: its number is not read',
    ],
  ],
  'src/cafe/counter.ts': [
    [
      'if (this.asideCount > 0) this.retryAside();',
      ['>'],
      'where no drink stands aside, looking for one finds none',
    ],
    ['private queue = new Int32Array(512);', ['512'], ROOM],
    ['const onShelf = counts[ware * PLACE_COUNT + SHELF]!;', ['+'], 'the shelf is place 0'],
    ['private turns = 0;', ['0'], OPENED],
    ['if (drinks > this.queue.length) {', ['>'], ROOM],
    ['this.turns += 1;', ['1'], 'only the order of the turns matters'],
  ],
  'src/cafe/day.ts': [
    [
      'this.drinks = 0;',
      ['0'],
      'drinks are then numbered from 1 on: a number is but a name, and each party says where its own begin',
    ],
    [
      'this.addDrink(kind, makeMs, 0);',
      ['0'],
      'the share of the dwell is read of second drinks only, and this is one of the first',
    ],
    ['this.firstDrink = grown(this.firstDrink, new Int32Array(to + 1));', ['1'], ROOM],
    ['parties = 0;', ['0'], 'a day is cleared before it is filled'],
    ['firstDrink = new Int32Array(257);', ['257'], ROOM],
    ['staysIn = new Uint8Array(256);', ['256'], ROOM],
    ['this.firstSecond = grown(this.firstSecond, new Int32Array(to + 1));', ['1'], ROOM],
  ],
  'src/cafe/demand.ts': [
    [
      'const drinks = least + (chanceOfMore > 0 && streams.rounds.uniform() < chanceOfMore ? 1 : 0);',
      ['<'],
      'a draw would have to be the chance itself to its last bit; the law of the draws is the same',
    ],
    [
      'const stays = staysIn >= 1 || (staysIn > 0 && streams.stays.uniform() < staysIn);',
      ['<'],
      'a draw would have to be the share itself to its last bit; the law of the draws is the same',
    ],
    [
      'if (secondDrink < 1 && streams.seconds.uniform() >= secondDrink) continue;',
      ['<'],
      'where everybody has a second drink a draw is then made and never misses; its stream gives nothing else',
    ],
    [
      'if (secondDrink < 1 && streams.seconds.uniform() >= secondDrink) continue;',
      ['>='],
      'a draw would have to be the share itself to its last bit; the law of the draws is the same',
    ],
  ],
  'src/cafe/events.ts': [
    [
      'drinkDone: 12,',
      ['12'],
      'only the order of the ranks matters, and 13 has the same neighbours',
    ],
  ],
  'src/cafe/people.ts': [
    ['free = 0;', ['0'], OPENED],
    [
      'return (to < closingMs ? to : closingMs) - from;',
      ['<'],
      'where both are equal, either will do',
    ],
  ],
  'src/cafe/returning.ts': [
    [
      'const key = calendar.time * RANKS + calendar.rank;',
      ['+'],
      'pieces return at rank 0, so plus and minus give the same key',
    ],
  ],
  'src/cafe/seats.ts': [
    ['private line = new Int32Array(64);', ['64'], ROOM],
    ['free = 0;', ['0'], OPENED],
    ['guestsLeft = 0;', ['0'], OPENED],
    ['if (parties > this.inLine.length) this.inLine = new Uint8Array(parties * 2);', ['2'], ROOM],
    [
      'else this.inLine.fill(0, 0, parties);',
      ['0'],
      'it is read of parties that have joined the line only, and is written as they join',
    ],
  ],
  'src/cafe/tables.ts': [
    ['private secondsOpen = new Int32Array(256);', ['256'], ROOM],
    ['if (drinks > this.nextServed.length) {', ['>'], ROOM],
  ],
  'src/cafe/washing/other-loads.ts': [
    [
      'if (racksPerMs > 0 && this.wanted <= atEnd + 1e-9) {',
      ['<='],
      'the accumulated rate would have to miss a whole number by the tolerance itself, to the last bit',
    ],
  ],
  'src/cafe/washing/rules/fixed-times.ts': [
    ['this.released = grown(this.released, new Uint8Array(rack * 2));', ['2'], ROOM],
    ['private released = new Uint8Array(32);', ['32'], ROOM],
  ],
};

/** Why a change makes no difference; undefined where that is not argued. */
export const equivalent = ({ file, code, from, nth }) =>
  bySource[file]?.find(
    ([line, changed]) =>
      line === code && (changed.includes(from) || changed.includes(`${from} no. ${nth}`)),
  )?.[2];
