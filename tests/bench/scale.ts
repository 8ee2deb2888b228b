/** Cost in guests and in days: time a guest at 100 and at 2,000 seats; memory of many days of ten ware; time of an answer in a warm process. */
import { readFileSync } from 'node:fs';
import { runDays } from '../../src/cafe/run-days.js';
import { compile } from '../../src/scenario/compile.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { inThisThread } from '../../src/cafe/runner.js';
import { scenarioStudy } from '../../src/questions/size/scenario-study.js';

const [, , what, file, amount] = process.argv;
const text = readFileSync(file!, 'utf8');

function modelOf(scenario: string) {
  const read = readScenario(scenario, file!, { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return compile(read.scenario, piecesPerRackOf);
}

if (what === 'guests') {
  const seats = Number(amount);
  const times = (count: number): number => Math.max(1, Math.round((count * seats) / 26));
  const model = modelOf(
    text
      .replace(/guests: \{ value: 64 \/ h[^}]*\}/, `guests: ${(64 * seats) / 26} / h`)
      .replace('count: 26', `count: ${seats}`)
      .replace('makers: 2', `makers: ${times(2)}`)
      .replace('clearers: 1', `clearers: ${times(1)}`)
      .replace('- class: undercounter', `- class: undercounter\n      count: ${times(1)}`),
  );
  const days = Math.round(120_000 / seats);
  for (let run = 0; run < 8; run += 1) {
    const start = process.cpuUsage().user;
    const { sums } = runDays({
      model,
      seed: 'scale',
      from: run * days,
      days,
      stock: null,
      listed: null,
      byDay: false,
    });
    const guests =
      sums.guestsSeated + sums.guestsTookAway + sums.guestsTakeawayInstead + sums.guestsLeft;
    if (run > 0)
      process.stdout.write(
        `${JSON.stringify({ nsAGuest: ((process.cpuUsage().user - start) * 1000) / guests })}\n`,
      );
  }
} else if (what === 'answers') {
  // As the page has it: the file read and answered, in a process that did it before.
  const timed = async (options: {
    readonly days?: number;
    readonly certifyOn?: number;
  }): Promise<number> => {
    const start = performance.now();
    const read = readScenario(text, file!, { piecesPerRack: piecesPerRackOf });
    if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
    await scenarioStudy(read, inThisThread(), options);
    return performance.now() - start;
  };
  for (let run = 0; run < 10; run += 1) {
    const [provisional, certified] = [await timed({ days: 200, certifyOn: 200 }), await timed({})];
    if (run > 2) process.stdout.write(`${JSON.stringify({ provisional, certified })}\n`);
  }
} else {
  // Ten ware in a small café, so that the days and not the guests are what grows.
  const ids = Array.from({ length: 10 }, (_, index) => `ware-${index}`);
  const model = modelOf(
    JSON.stringify({
      name: 'Many days',
      currency: 'EUR',
      staffHour: '20 EUR',
      hours: { for: '60 min' },
      arrivals: { steps: [{ for: '60 min', parties: '5 / h' }], dayFactor: 0.2 },
      guests: { partySize: 1, staysIn: '100 %', drinksEach: 1, secondDrink: 0, dwell: '10 min' },
      menu: Object.fromEntries(
        ids.map((id) => [id, { share: 0.1, setting: [id], making: '30 s' }]),
      ),
      ware: Object.fromEntries(
        ids.map((id) => [id, { price: '1 EUR', perRack: 10, drying: '5 min' }]),
      ),
      seats: { count: 20 },
      counter: { makers: 1 },
      clearing: 'atOnce',
      washing: { machines: [{ class: 'undercounter' }], hands: 1, partLoadWait: '5 min' },
    }),
  );
  const merged = await inThisThread().run({
    model,
    seed: 'many',
    from: 0,
    days: Number(amount),
    stock: null,
    listed: null,
    byDay: false,
  });
  process.stdout.write(
    `${JSON.stringify({ days: merged.days, ware: 10, megabytes: process.resourceUsage().maxRSS / 1024 })}\n`,
  );
}
