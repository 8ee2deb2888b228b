/**
 * A cup cycle in a general-purpose simulation library (simjs, from npm) that knows nothing of cafés: guests who
 * leave unserved when no cup is clean, exponential dwell, rounds by the clock, one machine that takes up to a rack.
 */
import { createRequire } from 'node:module';

interface Asked {
  done(call: () => void): void;
}
interface Stock {
  current(): number;
}
interface Entity {
  time(): number;
  setTimer(time: number): Asked;
  useFacility(facility: object, time: number): Asked;
  getBuffer(buffer: Stock, pieces: number): Asked;
  putBuffer(buffer: Stock, pieces: number): Asked;
}
interface Library {
  Sim: new () => { addEntity(kind: unknown): unknown; simulate(until: number): void };
  Entity: new (...args: unknown[]) => Entity;
  Facility: new (name: string) => object;
  Buffer: new (name: string, most: number, atFirst: number) => Stock;
  Random: new (seed: number) => { exponential(rate: number): number };
}

/** The library wants a browser's window; it leaves what it exports there. */
export function simjs(): Library {
  const holder = globalThis as unknown as { window?: { Sim?: Library } };
  holder.window ??= {};
  createRequire(import.meta.url)('simjs');
  return holder.window.Sim!;
}

/** Minutes, pieces and guests a minute. */
export const CUP_CYCLE = {
  cups: 60,
  guestsAMinute: 2,
  dwell: 20,
  every: 5,
  cycle: 3,
  rack: 25,
  minutes: 240,
} as const;

export function simjsCups(): (seed: number) => {
  readonly lost: number;
  readonly mostInHand: number;
} {
  const { Sim, Entity, Random } = simjs();
  const { cups, guestsAMinute, dwell, every, cycle, rack, minutes } = CUP_CYCLE;
  return (seed) => {
    const random = new Random(seed);
    let clean: number = cups;
    let [dirty, waiting, washing, inHand, lost, mostInHand] = [0, 0, 0, 0, 0, 0];
    class House extends Entity {
      start(): void {
        this.guest();
        this.round();
      }
      guest(): void {
        this.setTimer(random.exponential(guestsAMinute)).done(() => {
          if (clean > 0) {
            clean -= 1;
            inHand += 1;
            mostInHand = Math.max(mostInHand, inHand);
            this.setTimer(random.exponential(1 / dwell)).done(() => {
              inHand -= 1;
              dirty += 1;
            });
          } else lost += 1;
          this.guest();
        });
      }
      round(): void {
        this.setTimer(every).done(() => {
          waiting += dirty;
          dirty = 0;
          this.wash();
          this.round();
        });
      }
      wash(): void {
        if (washing > 0 || waiting === 0) return;
        washing = Math.min(rack, waiting);
        waiting -= washing;
        this.setTimer(cycle).done(() => {
          clean += washing;
          washing = 0;
          this.wash();
        });
      }
    }
    const sim = new Sim();
    sim.addEntity(House);
    sim.simulate(minutes);
    return { lost, mostInHand };
  };
}

/** The same with the library's own stores for clean cups and for those that wait for the wash, as its guide would have it. */
export function simjsCupsInStores(): (seed: number) => {
  readonly lost: number;
  readonly mostInHand: number;
} {
  const { Sim, Entity, Buffer, Random } = simjs();
  const { cups, guestsAMinute, dwell, every, cycle, rack, minutes } = CUP_CYCLE;
  return (seed) => {
    const random = new Random(seed);
    const clean = new Buffer('clean', cups, cups);
    const waiting = new Buffer('waiting', cups, 0);
    let [dirty, inHand, lost, mostInHand] = [0, 0, 0, 0];
    class Guests extends Entity {
      start(): void {
        this.setTimer(random.exponential(guestsAMinute)).done(() => {
          if (clean.current() > 0) this.getBuffer(clean, 1).done(() => this.drink());
          else lost += 1;
          this.start();
        });
      }
      drink(): void {
        inHand += 1;
        mostInHand = Math.max(mostInHand, inHand);
        this.setTimer(random.exponential(1 / dwell)).done(() => {
          inHand -= 1;
          dirty += 1;
        });
      }
    }
    class Rounds extends Entity {
      start(): void {
        this.setTimer(every).done(() => {
          if (dirty > 0) this.putBuffer(waiting, dirty);
          dirty = 0;
          this.start();
        });
      }
    }
    class Machine extends Entity {
      start(): void {
        this.getBuffer(waiting, 1).done(() => {
          const more = Math.min(rack - 1, waiting.current());
          if (more > 0) this.getBuffer(waiting, more);
          this.setTimer(cycle).done(() => {
            this.putBuffer(clean, more + 1);
            this.start();
          });
        });
      }
    }
    const sim = new Sim();
    for (const kind of [Guests, Rounds, Machine]) sim.addEntity(kind);
    sim.simulate(minutes);
    return { lost, mostInHand };
  };
}
