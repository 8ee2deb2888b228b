/** Chart: parties arriving, and under it the seats they take. */
import type { Evidence } from '../answer.js';
import type { ChartTable } from '../../../tell/charts/chart-table.js';
import { withSentence, telling, tellingStrips } from '../../../tell/charts/hover.js';
import {
  clockAxis,
  framed,
  palette,
  PLOT_WIDTH,
  type ChartContext,
  type ChartLayer,
  type ChartSpec,
} from '../../../tell/charts/style.js';
import { english } from '../../../tell/words.js';

export interface SeatsInput {
  readonly evidence: Evidence;
  /** Seats of the house; null: unlimited. */
  readonly seats: number | null;
  readonly openingMinute: number | null;
}

const SLOT_MINUTES = 15;

export function arrivalsAndSeats(input: SeatsInput, context: ChartContext): ChartSpec {
  const { formats, locale } = context;
  const say = english.charts.seats;
  const { slots, slotMinutes, taken, until } = shown(input.evidence);
  const { waitingForSeat } = input.evidence.guests;
  const busiest = slots.reduce(
    (best, slot) => (slot.parties > best.parties ? slot : best),
    slots[0] ?? { from: 0, to: 0, parties: 0 },
  );
  const fullest = taken.reduce(
    (best, one) => (one.seats > best.seats ? one : best),
    taken[0] ?? { minute: 0, seats: 0 },
  );
  const most = formats.decimal(fullest.seats, 0);
  const at = formats.clock(fullest.minute);
  const scale = { domain: [0, until], nice: false };
  const axis = clockAxis(
    until,
    formats,
    input.openingMinute === null ? english.charts.timeSinceOpening : english.charts.timeOfDay,
    input.openingMinute,
  );
  const y = { type: 'quantitative' as const, axis: { format: ',d', tickMinStep: 1 } };
  const top = Math.max(1, 1.15 * Math.max(input.seats ?? 0, fullest.seats));
  const sentence = taken.map(({ minute, seats }, i) => {
    const waiting = waitingForSeat[i] ?? 0;
    return {
      at: minute,
      sentence: say.sentenceSeats(
        formats.clock(minute),
        formats.count(Math.round(seats)),
        input.seats === null ? null : formats.count(input.seats),
        waiting < 0.05 ? null : formats.decimal(waiting),
      ),
    };
  });
  const capacity: ChartLayer[] =
    input.seats === null
      ? []
      : [
          {
            data: { values: [{ seats: input.seats }] },
            mark: { type: 'rule', strokeWidth: 1.5 },
            encoding: { y: { ...y, field: 'seats' } },
          },
          {
            data: {
              values: [
                { minute: 0, seats: input.seats, label: say.capacity(formats.count(input.seats)) },
              ],
            },
            mark: {
              type: 'text',
              align: 'left',
              baseline: 'bottom',
              dx: 4,
              dy: -4,
              fontWeight: 600,
            },
            encoding: {
              x: { field: 'minute', type: 'quantitative', scale },
              y: { ...y, field: 'seats' },
              text: { field: 'label', type: 'nominal' },
            },
          },
        ];
  return {
    ...framed({
      title:
        fullest.seats === 0
          ? say.titleNone
          : input.seats === null
            ? say.titleUnlimited(most, at)
            : say.title(
                most,
                formats.count(input.seats),
                formats.percent(input.seats > 0 ? fullest.seats / input.seats : 0, 0),
                at,
              ),
      description: say.description(
        formats.decimal(busiest.parties),
        formats.minutes(slotMinutes),
        formats.clock(busiest.from),
      ),
      locale,
    }),
    spacing: 22,
    vconcat: [
      {
        width: PLOT_WIDTH,
        height: 110,
        data: {
          values: slots
            .filter(({ parties }) => parties > 0)
            .map((slot) => ({
              ...slot,
              sentence: say.sentenceParties(
                formats.clock(slot.from),
                formats.clock(slot.to),
                formats.decimal(slot.parties),
              ),
            })),
        },
        mark: { type: 'bar', ...telling, color: palette.blue, binSpacing: 1 },
        encoding: {
          x: {
            field: 'from',
            type: 'quantitative',
            scale,
            axis: { ...axis, title: null },
            bin: { binned: true },
          },
          x2: { field: 'to' },
          y: { ...y, field: 'parties', title: say.parties(`${formats.count(slotMinutes)} min`) },
          ...withSentence,
        },
      },
      {
        width: PLOT_WIDTH,
        height: 130,
        layer: [
          {
            data: { values: taken },
            mark: {
              type: 'area',
              color: palette.orange,
              opacity: 0.55,
              line: { color: palette.orange, strokeWidth: 1.5 },
            },
            encoding: {
              x: { field: 'minute', type: 'quantitative', scale, axis },
              y: {
                ...y,
                field: 'seats',
                scale: { domain: [0, top], nice: false },
                title: say.taken,
              },
            },
          },
          ...capacity,
          ...tellingStrips(sentence, { field: 'minute', type: 'quantitative', scale, axis }),
        ],
      },
    ],
  };
}

export function arrivalsAndSeatsTable(input: SeatsInput): ChartTable {
  const say = english.charts.seats;
  const { guests, stepMinutes } = input.evidence;
  const { taken } = shown(input.evidence);
  return {
    caption: say.caption,
    columns: [
      { title: say.time, as: 'clock' },
      { title: say.partiesHead, as: 'decimal' },
      { title: say.takenHead, as: 'decimal' },
      { title: say.waitingHead, as: 'decimal' },
    ],
    rows: taken.map(({ seats }, i) => [
      i * stepMinutes,
      guests.partiesArriving[i] ?? null,
      seats,
      guests.waitingForSeat[i] ?? null,
    ]),
  };
}

/** Arrivals added up to slots of a quarter hour (or one step, if longer), seats step by step, until the house is empty. */
function shown({ guests, stepMinutes }: Evidence) {
  const last = Math.max(
    guests.seatsTaken.findLastIndex((seats) => seats > 0.05),
    guests.partiesArriving.findLastIndex((parties) => parties > 0),
  );
  const steps = Math.max(2, Math.min(guests.seatsTaken.length, last + 2));
  const together = Math.max(1, Math.round(SLOT_MINUTES / stepMinutes));
  const slots: { from: number; to: number; parties: number }[] = [];
  for (let i = 0; i < steps; i += together) {
    const parties = guests.partiesArriving
      .slice(i, i + together)
      .reduce((sum, one) => sum + one, 0);
    slots.push({ from: i * stepMinutes, to: (i + together) * stepMinutes, parties });
  }
  const taken = guests.seatsTaken
    .slice(0, steps)
    .map((seats, i) => ({ minute: i * stepMinutes, seats }));
  return {
    slots,
    slotMinutes: together * stepMinutes,
    taken,
    until: Math.max((steps - 1) * stepMinutes, slots.at(-1)?.to ?? 0),
  };
}
