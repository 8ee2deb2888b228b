/** Chart: how busy people and machines are through the day, and under it what waits for them. */
import type { Evidence } from '../answer.js';
import type { Capacity } from '../../../tell/context.js';
import type { ChartTable } from '../../../tell/charts/chart-table.js';
import { tellingStrips, UNSEEN } from '../../../tell/charts/hover.js';
import {
  clockAxis,
  framed,
  palette,
  percentAxis,
  PLOT_WIDTH,
  type ChartContext,
  type ChartSpec,
} from '../../../tell/charts/style.js';
import { listed, english } from '../../../tell/words.js';

export interface StaffInput {
  readonly evidence: Evidence;
  readonly capacity: Capacity;
  readonly openingMinute: number | null;
}

const stages = [
  { id: 'machines', busy: 'machinesBusy', colour: palette.blue, dash: [1, 0] },
  { id: 'makers', busy: 'makersBusy', colour: palette.orange, dash: [8, 3] },
  { id: 'hands', busy: 'handsBusy', colour: palette.purple, dash: [2, 2] },
  { id: 'clearers', busy: 'clearersBusy', colour: palette.green, dash: [8, 3, 2, 3] },
] as const;
const SLOT_MINUTES = 15;
const queues = [
  { id: 'racks', waiting: 'racksWaiting', colour: palette.blue, dash: [1, 0] },
  { id: 'drinks', waiting: 'drinksWaiting', colour: palette.orange, dash: [8, 3] },
] as const;

export function staffAndMachine(input: StaffInput, context: ChartContext): ChartSpec {
  const { formats, locale } = context;
  const say = english.charts.staff;
  const { guests, stepMinutes } = input.evidence;
  const { limited, steps, until } = shown(input);
  const busy = limited.flatMap((stage) =>
    slotMeans(guests[stage.busy].slice(0, steps), stepMinutes).map(({ minute, mean }) => ({
      minute,
      who: say.who[stage.id],
      share: mean / stage.capacity,
    })),
  );
  const waiting = queues.flatMap((queue) =>
    slotMeans(guests[queue.waiting].slice(0, steps), stepMinutes).map(({ minute, mean }) => ({
      minute,
      what: say[queue.id],
      waiting: mean,
    })),
  );
  const worst = busy.reduce(
    (best, one) => (one.share > best.share ? one : best),
    busy[0] ?? { minute: 0, who: '', share: 0 },
  );
  const racks = slotMeans(guests.racksWaiting.slice(0, steps), stepMinutes);
  const most = racks.reduce(
    (best, one) => (one.mean > best.mean ? one : best),
    racks[0] ?? { minute: 0, mean: 0 },
  );
  const drinks = slotMeans(guests.drinksWaiting.slice(0, steps), stepMinutes);
  const sentenceBusy = racks.flatMap(({ minute }) => {
    const list = busy
      .filter((one) => one.minute === minute)
      .map(({ who, share }) => say.busyOne(who, formats.percent(share, 0)));
    return list.length === 0
      ? []
      : [{ at: minute, sentence: say.sentenceBusy(formats.clock(minute), listed(list)) }];
  });
  const sentenceWaiting = racks.map(({ minute, mean }, i) => {
    const [time, making] = [formats.clock(minute), drinks[i]?.mean ?? 0];
    return {
      at: minute,
      sentence:
        mean < 0.05 && making < 0.05
          ? say.sentenceNoWait(time)
          : say.sentenceWaiting(time, formats.decimal(mean), formats.decimal(making)),
    };
  });
  const scale = { domain: [0, until], nice: false };
  const axis = clockAxis(
    until,
    formats,
    input.openingMinute === null ? english.charts.timeSinceOpening : english.charts.timeOfDay,
    input.openingMinute,
  );
  const x = { type: 'quantitative' as const, scale, axis };
  const key = (
    of: readonly {
      readonly name: string;
      readonly colour: string;
      readonly dash: readonly number[];
    }[],
  ) => ({
    color: {
      type: 'nominal' as const,
      scale: { domain: of.map(({ name }) => name), range: of.map(({ colour }) => colour) },
    },
    strokeDash: {
      type: 'nominal' as const,
      scale: { domain: of.map(({ name }) => name), range: of.map(({ dash }) => [...dash]) },
    },
  });
  const whoKey = key(limited.map(({ id, colour, dash }) => ({ name: say.who[id], colour, dash })));
  const whatKey = key(queues.map(({ id, colour, dash }) => ({ name: say[id], colour, dash })));
  const legend = { symbolType: 'stroke' as const, symbolSize: 400, columns: 2 };
  return {
    ...framed({
      title:
        limited.length === 0
          ? say.titleNone
          : say.title(worst.who, formats.percent(worst.share, 0), formats.clock(worst.minute)),
      description:
        most.mean < 0.05
          ? say.descriptionNoWait
          : say.description(formats.decimal(most.mean), formats.clock(most.minute)),
      locale,
    }),
    spacing: 26,
    resolve: { scale: { color: 'independent', strokeDash: 'independent' } },
    vconcat: [
      {
        width: PLOT_WIDTH,
        height: 140,
        layer: [
          {
            data: { values: busy },
            mark: { type: 'line', strokeWidth: 2 },
            encoding: {
              x: { ...x, axis: { ...axis, title: null }, field: 'minute' },
              y: {
                field: 'share',
                type: 'quantitative',
                title: say.busy,
                scale: { domain: [0, 1] },
                axis: percentAxis(),
              },
              color: { ...whoKey.color, field: 'who', legend },
              strokeDash: { ...whoKey.strokeDash, field: 'who', legend },
            },
          },
          ...tellingStrips(sentenceBusy, { ...x, axis: { ...axis, title: null } }),
        ],
      },
      {
        width: PLOT_WIDTH,
        height: 110,
        layer: [
          {
            data: { values: waiting },
            mark: { type: 'line', strokeWidth: 2 },
            encoding: {
              x: { ...x, field: 'minute' },
              y: { field: 'waiting', type: 'quantitative', title: say.waiting },
              color: { ...whatKey.color, field: 'what', legend },
              strokeDash: { ...whatKey.strokeDash, field: 'what', legend },
            },
          },
          ...tellingStrips(sentenceWaiting, x, `${UNSEEN}-below`),
        ],
      },
    ],
  };
}

export function staffAndMachineTable(input: StaffInput): ChartTable {
  const say = english.charts.staff;
  const { guests, stepMinutes } = input.evidence;
  const { limited, steps } = shown(input);
  return {
    caption: say.caption,
    columns: [
      { title: say.time, as: 'clock' },
      ...limited.map(({ id }) => ({ title: say.who[id], as: 'share' as const })),
      ...queues.map(({ id }) => ({ title: say[id], as: 'decimal' as const })),
    ],
    rows: Array.from({ length: steps }, (_, i) => [
      i * stepMinutes,
      ...limited.map(({ busy, capacity }) => (guests[busy][i] ?? 0) / capacity),
      ...queues.map(({ waiting }) => guests[waiting][i] ?? null),
    ]),
  };
}

/** Means over quarter hours, each shown at its middle: rounds and loads that come by the clock would else make a comb. */
function slotMeans(
  values: readonly number[],
  stepMinutes: number,
): { minute: number; mean: number }[] {
  const together = Math.max(1, Math.round(SLOT_MINUTES / stepMinutes));
  const slots: { minute: number; mean: number }[] = [];
  for (let i = 0; i < values.length; i += together) {
    const part = values.slice(i, i + together);
    slots.push({
      minute: (i + (part.length - 1) / 2) * stepMinutes,
      mean: part.reduce((sum, one) => sum + one, 0) / part.length,
    });
  }
  return slots;
}

/** The stages that have a limit, and the steps until everything stands still. */
function shown({ evidence, capacity }: StaffInput) {
  const { guests, stepMinutes } = evidence;
  const limited = stages.flatMap((stage) => {
    const of = capacity[stage.id];
    return of === null || of <= 0 ? [] : [{ ...stage, capacity: of }];
  });
  const series = [
    ...limited.map(({ busy }) => guests[busy]),
    ...queues.map(({ waiting }) => guests[waiting]),
  ];
  const last = Math.max(...series.map((values) => values.findLastIndex((value) => value > 0.01)));
  const steps = Math.max(2, Math.min(guests.machinesBusy.length, last + 2));
  return { limited, steps, until: (steps - 1) * stepMinutes };
}
