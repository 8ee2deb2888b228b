/**
 * Observed against fitted, as a Vega-Lite specification: parties by slot above, daily totals below.
 */
import type { TillKinds } from './fit-kinds.js';
import type { TillFit } from './fit-till.js';
import { mixedPoisson } from './mixed-poisson.js';

/** A Vega-Lite specification as plain data. */
export type ChartSpec = Readonly<Record<string, unknown>>;

const fittedColour = '#8fb0c9';
const observedColour = '#7a3b1d';

function slotPanel(fit: TillFit): ChartSpec {
  const values = fit.slots.map((slot) => ({
    starts: slot.starts,
    mean: slot.parties,
    fittedLow: slot.fitted.low,
    fittedHigh: slot.fitted.high,
    observedLow: slot.observed.low,
    observedHigh: slot.observed.high,
  }));
  const x = {
    field: 'starts',
    type: 'ordinal',
    title: `${fit.slotMinutes} min from`,
    axis: { labelOverlap: true, labelAngle: 0 },
  };
  return {
    title: {
      text: 'Parties in a slot',
      subtitle:
        'bar: nine days in ten as fitted; line: the same as observed; dot: the mean, which the fit takes over',
    },
    width: 640,
    height: 220,
    data: { values },
    encoding: { x },
    layer: [
      {
        mark: { type: 'bar', color: fittedColour, width: { band: 0.8 } },
        encoding: {
          y: { field: 'fittedLow', type: 'quantitative', title: 'parties' },
          y2: { field: 'fittedHigh' },
        },
      },
      {
        mark: { type: 'rule', color: observedColour, strokeWidth: 2 },
        encoding: {
          y: { field: 'observedLow', type: 'quantitative' },
          y2: { field: 'observedHigh' },
        },
      },
      {
        mark: { type: 'point', color: observedColour, filled: true, size: 36, opacity: 1 },
        encoding: { y: { field: 'mean', type: 'quantitative' } },
      },
    ],
  };
}

function totalsPanel(fit: TillFit): ChartSpec {
  const sorted = fit.totals.map((day) => day.parties).sort((one, other) => one - other);
  const observed = [
    { parties: sorted[0]!, share: 0 },
    ...sorted.map((parties, at) => ({ parties, share: (at + 1) / sorted.length })),
  ];
  let below = 0;
  const fitted = mixedPoisson(fit.partiesADay.mean, fit.dayFactor.cv)
    .map((chance, parties) => ({ parties, share: (below += chance) }))
    .filter(({ share }) => share > 0.0005 && share < 0.9995);
  const y = {
    field: 'share',
    type: 'quantitative',
    title: 'share of days',
    axis: { format: '.0%' },
    scale: { domain: [0, 1] },
  };
  const x = {
    field: 'parties',
    type: 'quantitative',
    title: 'parties a day, at most',
    scale: { zero: false },
  };
  return {
    title: {
      text: 'Daily totals',
      subtitle: `band: fitted, day factor CV ${fit.dayFactor.cv.toFixed(3)}; steps: the ${fit.days} days observed`,
    },
    width: 640,
    height: 180,
    encoding: { x, y },
    layer: [
      {
        data: { values: fitted },
        mark: { type: 'line', color: fittedColour, strokeWidth: 6, interpolate: 'step-after' },
      },
      {
        data: { values: observed },
        mark: { type: 'line', color: observedColour, strokeWidth: 1.5, interpolate: 'step-after' },
      },
    ],
  };
}

/** Mean parties by slot, a line a kind. */
function kindsPanel({ base, fit, fitted }: TillKinds): ChartSpec {
  const kinds = [{ id: base.id, fit }, ...fitted];
  const values = kinds.flatMap(({ id, fit: { slots } }) =>
    slots.map(({ starts, parties, standardError }) => ({
      kind: id,
      starts,
      parties,
      low: Math.max(0, parties - 1.96 * standardError),
      high: parties + 1.96 * standardError,
    })),
  );
  const kind = { field: 'kind', type: 'nominal', title: null, sort: kinds.map(({ id }) => id) };
  const scale = { range: ['#7a3b1d', '#2f6690', '#8a6d1b', '#4d7c4a', '#6b4c8a'] };
  return {
    title: {
      text: 'Kinds of day that differ',
      subtitle: 'line: mean parties in a slot; band: its 95 % interval',
    },
    width: 640,
    height: 180,
    data: { values },
    encoding: {
      x: {
        field: 'starts',
        type: 'ordinal',
        title: `${fit.slotMinutes} min from`,
        axis: { labelOverlap: true, labelAngle: 0 },
      },
    },
    layer: [
      {
        mark: { type: 'area', opacity: 0.15, line: false },
        encoding: {
          y: { field: 'low', type: 'quantitative', title: 'parties' },
          y2: { field: 'high' },
          color: { ...kind, scale, legend: null },
        },
      },
      {
        mark: { type: 'line', strokeWidth: 2 },
        encoding: {
          y: { field: 'parties', type: 'quantitative' },
          color: { ...kind, scale },
          strokeDash: kind,
        },
      },
    ],
  };
}

/** The drawing of a fit: what the days showed over what the fit would have them show, and kinds of day where they differ. */
export function tillChart(fit: TillFit, kinds: TillKinds | null = null): ChartSpec {
  return {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    description: `Observed and fitted parties of ${fit.file}, ${fit.kind}, ${fit.from} to ${fit.to}`,
    background: '#ffffff',
    autosize: { type: 'pad', resize: true },
    vconcat: [
      slotPanel(fit),
      totalsPanel(fit),
      ...(kinds === null || kinds.fitted.length === 0 ? [] : [kindsPanel(kinds)]),
    ],
  };
}
