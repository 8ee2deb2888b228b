/**
 * The two pieces of work in JavaScript: through our engine's public interface, through the whole café
 * as an ordinary scenario file, and in simjs. A run for each line that comes in, told as a line of JSON.
 *
 * (a) M/M/1: arrivals 0.8, service 1, 300,000 customers; mean wait in queue 4.
 * (b) cup cycle: 240 minutes, guests 2 a minute, 60 cups, exponential dwell of 20 minutes, rounds every 5
 *     minutes, one machine of 25 pieces and 3 minutes; guests who find no cup are lost.
 */
import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { Day } from '../../src/cafe/day.js';
import { Demand } from '../../src/cafe/demand.js';
import { Floor } from '../../src/cafe/floor.js';
import { Calendar } from '../../src/engine/calendar.js';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { compile } from '../../src/scenario/compile.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { simjs, simjsCups, simjsCupsInStores } from '../oracles/simjs-cups.js';

type Result = readonly [first: number, second: number];

const SECOND = 1000;
const MINUTE = 60_000;

function engineQueue(): (seed: number) => Result {
  const customers = 300_000;
  const line = new Float64Array(1 << 16);
  const calendar = new Calendar(32 * SECOND, 64);
  const stream = new Stream(streamKey('bench', 'queue'));
  return (seed) => {
    stream.toDay(seed);
    calendar.clear();
    let [head, tail, arrived, waited] = [0, 0, 0, 0];
    let busy = false;
    calendar.schedule(Math.round(stream.quickExponential() * 1250), 0, 0);
    while (calendar.take()) {
      const now = calendar.time;
      if (calendar.rank === 0) {
        arrived += 1;
        if (arrived < customers)
          calendar.schedule(now + Math.floor(stream.quickExponential() * 1250 + 0.5), 0, 0);
        if (busy) {
          line[tail & 65535] = now;
          tail += 1;
        } else {
          busy = true;
          calendar.schedule(now + Math.floor(stream.quickExponential() * 1000 + 0.5), 1, 0);
        }
      } else if (head === tail) {
        busy = false;
      } else {
        waited += now - line[head & 65535]!;
        head += 1;
        calendar.schedule(now + Math.floor(stream.quickExponential() * 1000 + 0.5), 1, 0);
      }
    }
    return [waited / customers / SECOND, 0];
  };
}

function engineCups(): (seed: number) => Result {
  const calendar = new Calendar(16 * SECOND, 1024);
  const stream = new Stream(streamKey('bench', 'cups'));
  const gap = 0.5 * MINUTE;
  const dwell = 20 * MINUTE;
  return (seed) => {
    stream.toDay(seed);
    calendar.clear();
    let [clean, dirty, waiting, washing, hand, most, lost] = [60, 0, 0, 0, 0, 0, 0];
    calendar.schedule(Math.floor(stream.quickExponential() * gap + 0.5), 3, 0);
    calendar.schedule(5 * MINUTE, 2, 0);
    while (calendar.take()) {
      const now = calendar.time;
      if (now > 240 * MINUTE) break;
      switch (calendar.rank) {
        case 3:
          calendar.schedule(now + Math.floor(stream.quickExponential() * gap + 0.5), 3, 0);
          if (clean > 0) {
            clean -= 1;
            hand += 1;
            if (hand > most) most = hand;
            calendar.schedule(now + Math.floor(stream.quickExponential() * dwell + 0.5), 1, 0);
          } else lost += 1;
          continue;
        case 1:
          hand -= 1;
          dirty += 1;
          continue;
        case 2:
          waiting += dirty;
          dirty = 0;
          calendar.schedule(now + 5 * MINUTE, 2, 0);
          break;
        default:
          clean += washing;
          washing = 0;
      }
      if (washing === 0 && waiting > 0) {
        washing = waiting < 25 ? waiting : 25;
        waiting -= washing;
        calendar.schedule(now + 3 * MINUTE, 0, 0);
      }
    }
    return [lost, most];
  };
}

function cafeCups(file: string): (seed: number) => Result {
  const read = readScenario(readFileSync(file), file);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  const model = compile(read.scenario);
  const [floor, demand, day] = [new Floor(model, 'bench'), new Demand(model, 'bench'), new Day()];
  return (seed) => {
    demand.draw(seed, day);
    floor.run(day, seed, [60]);
    return [floor.counter.shortDrinks, Number.NaN];
  };
}

function simjsQueue(): (seed: number) => Result {
  const { Sim, Entity, Facility, Random } = simjs();
  const customers = 300_000;
  return (seed) => {
    const random = new Random(seed + 1);
    const server = new Facility('server');
    let [arrived, waited] = [0, 0];
    class Door extends Entity {
      start(): void {
        this.customer();
      }
      customer(): void {
        this.setTimer(random.exponential(0.8)).done(() => {
          arrived += 1;
          const service = random.exponential(1);
          const came = this.time();
          this.useFacility(server, service).done(() => {
            waited += this.time() - came - service;
          });
          if (arrived < customers) this.customer();
        });
      }
    }
    const sim = new Sim();
    sim.addEntity(Door);
    sim.simulate(Infinity);
    return [waited / customers, 0];
  };
}

const works: Record<string, () => (seed: number) => Result> = {
  'engine-mm1': engineQueue,
  'engine-cups': engineCups,
  'cafe-cups': () => cafeCups(process.argv[4]!),
  'simjs-mm1': simjsQueue,
  'simjs-cups': () => told(simjsCups()),
  'simjs-stores': () => told(simjsCupsInStores()),
};
const told =
  (cups: ReturnType<typeof simjsCups>) =>
  (seed: number): Result => {
    const { lost, mostInHand } = cups(seed + 1);
    return [lost, mostInHand];
  };
const [, , name, replicationsText] = process.argv;
const once = works[name!]!();
const replications = Number(replicationsText);
const done = { runs: 0 };
for await (const _ of createInterface({ input: process.stdin })) {
  const sums = [
    [0, 0],
    [0, 0],
  ];
  const start = process.hrtime.bigint();
  for (let i = 0; i < replications; i += 1) {
    const result = once(done.runs * 1_000_003 + i);
    result.forEach((value, at) => {
      sums[at]![0]! += value;
      sums[at]![1]! += value * value;
    });
  }
  const seconds = Number(process.hrtime.bigint() - start) / 1e9;
  done.runs += 1;
  process.stdout.write(
    `${JSON.stringify({ seconds, n: replications, sums: sums.map((pair) => pair.map((value) => (Number.isNaN(value) ? null : value))) })}\n`,
  );
}
