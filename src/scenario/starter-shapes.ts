/** How guests spread over the busy hours: three shapes to begin with. Common practice, no source. */

interface Shape {
  readonly name: string;
  /** When it suits. */
  readonly about: string;
  /** Weights of equal parts of the hours, however long these are; null: by the clock. */
  readonly parts: readonly number[] | null;
}

export const shapes = {
  morning: {
    name: 'morning',
    about: 'one rush that builds up early and tails off: people on their way to work',
    parts: [3, 5, 7, 9, 11, 13, 13, 11, 9, 7, 6, 6],
  },
  midday: {
    name: 'midday',
    about: 'fills slowly, stays full: brunch, lunch, weekends',
    parts: [1.2, 2.6, 3.2, 4.7, 5.5, 6.3, 5.4, 7.7, 8.9, 8.5, 8.9, 8.0, 8.1, 6.6, 7.2, 7.2],
  },
  'all-day': {
    name: 'all-day',
    about: 'a peak about 8:30, another about 12:30, quieter between and after',
    parts: null,
  },
} as const satisfies Readonly<Record<string, Shape>>;

export type ShapeId = keyof typeof shapes;

/** Weight of each half hour of a day with two peaks, by the clock; the first is midnight. */
const byHalfHour = [
  ...Array.from({ length: 12 }, () => 1),
  2,
  4,
  7,
  9,
  11,
  12,
  10,
  9,
  8,
  8,
  8,
  9,
  10,
  12,
  12,
  11,
  9,
  8,
  8,
  8,
  7,
  6,
  5,
  4,
  ...Array.from({ length: 12 }, () => 3),
];

/** The shape that is usual for hours, in minutes since midnight: it depends on when they begin and how long they last. */
export function usualShape(from: number, to: number): ShapeId {
  if (to - from > 6 * 60) return 'all-day';
  return from < 9 * 60 ? 'morning' : 'midday';
}

/** Weights of equal parts of the hours. */
export function partsOf(shape: ShapeId, from: number, to: number): readonly number[] {
  const { parts } = shapes[shape];
  if (parts !== null) return parts;
  const count = Math.max(1, Math.round((to - from) / 30));
  const length = (to - from) / count;
  return Array.from(
    { length: count },
    (_, i) => byHalfHour[Math.min(47, Math.floor((from + (i + 0.5) * length) / 30))]!,
  );
}

/** The middle of the busiest part, in minutes since midnight. */
export function busiestAt(shape: ShapeId, from: number, to: number): number {
  const parts = partsOf(shape, from, to);
  const most = Math.max(...parts);
  const [first, last] = [parts.indexOf(most), parts.lastIndexOf(most)];
  const middle = shape === 'all-day' ? first + 0.5 : (first + last + 1) / 2;
  return from + (middle * (to - from)) / parts.length;
}
