/** Days shared between engines are the days of one. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runDays } from '../../src/cafe/run-days.js';
import type { CafeModel } from '../../src/cafe/model.js';
import type { RushTask } from '../../src/cafe/rush.js';
import { isTooMuch } from '../../src/cafe/too-much.js';
import { serveDays, sharingRunner, Stopped } from '../../src/page/engine/shared-days.js';
import { compile } from '../../src/scenario/compile.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { inThisThread } from '../../src/cafe/runner.js';

const read = readScenario(
  readFileSync(new URL('../../scenarios/1-commuter-bar.yaml', import.meta.url)),
  'bar',
  { piecesPerRack: piecesPerRackOf },
);
if (!read.ok) throw new Error('the demo does not read');
const model = compile(read.scenario, piecesPerRackOf);
const task = (from: number, days: number): RushTask => ({
  model,
  seed: 'shared',
  from,
  days,
  stock: null,
  listed: null,
  byDay: false,
});

const arrivalsTimes = (times: number): CafeModel['arrivals'] =>
  model.arrivals.map((step) => ({ ...step, partiesPerMs: step.partiesPerMs * times }));

/** A channel with a neighbour at its other end, for as long as `use` takes. */
async function withNeighbour(use: (port: MessagePort) => Promise<void>): Promise<void> {
  const { port1, port2 } = new MessageChannel();
  serveDays(port2);
  try {
    await use(port1);
  } finally {
    port1.close();
    port2.close();
  }
}

/** The port, with the first day of each chunk that goes through it noted. */
const noting = (port: MessagePort, note: (from: number) => void): MessagePort =>
  ({
    set onmessage(heard: MessagePort['onmessage']) {
      port.onmessage = heard;
    },
    postMessage(errand: { task: RushTask } | null) {
      if (errand !== null) note(errand.task.from);
      port.postMessage(errand);
    },
  }) as MessagePort;

describe('days shared with seven neighbours', () => {
  it('give the bytes of one run, to each of them its part, ahead too', async () => {
    const channels = Array.from({ length: 7 }, () => new MessageChannel());
    const sent = channels.map((): number[] => []);
    for (const { port2 } of channels) serveDays(port2);
    const ports = channels.map(({ port1 }, i) => noting(port1, (from) => sent[i]!.push(from)));
    const runner = sharingRunner(ports, () => true);
    expect(await runner.run(task(0, 800), 600)).toEqual(runDays(task(0, 800)));
    expect(await runner.run(task(800, 600))).toEqual(runDays(task(800, 600)));
    const chunks = sent.flat();
    expect(sent.every((own) => own.length > 0)).toBe(true);
    expect(chunks.some((from) => from >= 800)).toBe(true);
    // No day is run twice.
    expect(new Set(chunks).size).toBe(chunks.length);
    for (const { port1, port2 } of channels) for (const port of [port1, port2]) port.close();
  });
});

describe('days shared with a neighbour', () => {
  it('give the bytes of one run, however they were shared out', () =>
    withNeighbour(async (port) => {
      await fc.assert(
        fc.asyncProperty(fc.nat(50), fc.integer({ min: 1, max: 400 }), async (from, days) => {
          let told = 0;
          const shared = await sharingRunner(
            [port],
            () => true,
            (more) => (told += more),
          ).run(task(from, days));
          expect(shared).toEqual(runDays(task(from, days)));
          expect(told).toBe(days);
        }),
        { seed: 20, numRuns: 12 },
      );
    }));

  it('are the same where the neighbour ran ahead, whether or not the days announced are asked for next', () =>
    withNeighbour(async (port) => {
      await fc.assert(
        fc.asyncProperty(
          fc.integer({ min: 150, max: 400 }),
          fc.integer({ min: 1, max: 600 }),
          fc.boolean(),
          async (days, after, kept) => {
            let told = 0;
            const runner = sharingRunner(
              [port],
              () => true,
              (more) => (told += more),
            );
            expect(await runner.run(task(0, days), after)).toEqual(runDays(task(0, days)));
            const next = kept ? task(days, after) : task(days + 1, after);
            expect(await runner.run(next)).toEqual(runDays(next));
            expect(told).toBe(days + after);
          },
        ),
        { seed: 21, numRuns: 8 },
      );
    }));

  it('stay apart where they are wanted apart', () =>
    withNeighbour(async (port) => {
      for (const runner of [sharingRunner([port], () => true), inThisThread()]) {
        const parts = await runner.apart(task(5, 330), 50);
        expect(parts).toEqual([
          ...[5, 55, 105, 155, 205, 255].map((from) => runDays(task(from, 50))),
          runDays(task(305, 30)),
        ]);
      }
    }));

  it('are begun by the neighbour while the other thinks', () =>
    withNeighbour(async (port) => {
      const sent: number[] = [];
      const runner = sharingRunner([noting(port, (from) => sent.push(from))], () => true);
      await runner.run(task(0, 300), 1000);
      expect(sent.filter((from) => from >= 300).length).toBeGreaterThan(1);
      const before = sent.length;
      await runner.run(task(300, 1000));
      // What was begun is not sent again.
      expect(new Set(sent).size).toBe(sent.length);
      expect(sent.length).toBeGreaterThanOrEqual(before);
    }));

  it('are given up within a day', async () => {
    let looks = 0;
    const wanted = (): boolean => (looks += 1) < 2;
    // A day of this café has more pauses than that, and it is the only one.
    const busy = { ...task(0, 1), model: { ...model, arrivals: arrivalsTimes(400) } };
    await expect(sharingRunner([], wanted).run(busy)).rejects.toBeInstanceOf(Stopped);
    expect(looks).toBe(2);
  });

  it('that ask for too much fail alike, whichever of the two meets them', () =>
    withNeighbour(async (port) => {
      const { washing, guests } = model;
      const tower: CafeModel = {
        ...model,
        arrivals: arrivalsTimes(500),
        guests: { ...guests, staysIn: 1 },
        seats: { ...model.seats, count: null },
        makers: null,
        washing: { ...washing, everyMachine: { ...washing.everyMachine, warmUpMs: 1e9 } },
        clearing: { ...model.clearing, every: { law: 'constant', ms: 1e9 } },
      };
      const sent = await new Promise<unknown>((resolve) => {
        port.onmessage = ({ data }) => resolve(data);
        port.postMessage({ number: 1, task: task(0, 1), model: tower });
      });
      expect(sent).toMatchObject({
        part: { name: 'TooMuch', fault: expect.stringMatching(/pieces are off the shelf at once/) },
      });
      const met = sharingRunner([port], () => true).run({ ...task(0, 400), model: tower });
      await expect(met).rejects.toSatisfy(isTooMuch);
    }));

  it('are given up when they are no longer wanted, and what comes late is not taken for the next run', () =>
    withNeighbour(async (port) => {
      let chunks = 0;
      await expect(
        sharingRunner([port], () => (chunks += 1) < 4).run(task(0, 3000)),
      ).rejects.toBeInstanceOf(Stopped);
      expect(await sharingRunner([port], () => true).run(task(7, 300))).toEqual(
        runDays(task(7, 300)),
      );
    }));
});
