/**
 * What a picture tells of a point when it is pointed at. A mark carries its sentence as a description,
 * which `renderSvg` turns into the `title` of its shape: browsers show that without a script.
 */
import type { ChartLayer } from './style.js';

/** Sentences in one picture at most, so that a long day does not weigh more than a short one. */
export const MOST_SENTENCES = 60;

/** To be spread into a mark that says its figures aloud, and into its encoding; its data carry the sentence as `sentence`. */
export const telling = { aria: true } as const;
export const withSentence = { description: { field: 'sentence', type: 'nominal' } } as const;

/** Layers whose names begin so are unseen and only tell. */
export const UNSEEN = 'unseen';

export interface HoverText {
  /** Where on the horizontal scale. */
  readonly at: number;
  readonly sentence: string;
}

/** Every second, third, ... of the items, the last among them, so that at most `most` are left. */
export function thinned<T>(items: readonly T[], most: number = MOST_SENTENCES): T[] {
  const every = Math.ceil(items.length / most);
  return items.filter((_, i) => (items.length - 1 - i) % every === 0);
}

/**
 * Unseen strips side by side over the whole height of the picture, each about its point, parting from
 * its neighbours half-way: wherever one points, the nearest point answers.
 * @param points in order along the scale
 * @param x the encoding of the horizontal scale, shared with the marks that are seen
 * @param name unlike other layers' in the same picture
 */
export function tellingStrips(
  points: readonly HoverText[],
  x: object,
  name: string = UNSEEN,
): ChartLayer[] {
  const kept = thinned(points);
  const values = kept.map(({ at, sentence }, i) => ({
    from: i === 0 ? at : (kept[i - 1]!.at + at) / 2,
    to: i === kept.length - 1 ? at : (at + kept[i + 1]!.at) / 2,
    sentence,
  }));
  if (values.length === 0) return [];
  return [
    {
      name,
      data: { values },
      mark: { type: 'rect', ...telling, opacity: 0 },
      encoding: { x: { ...x, field: 'from' }, x2: { field: 'to' }, ...withSentence },
    } as ChartLayer,
  ];
}

/** Unseen strips the other way: one for each row of a chart of names, over its whole width. `y`: the encoding of the names, which the rows carry. */
export const tellingRows = (
  rows: readonly { readonly sentence: string }[],
  y: object,
): ChartLayer[] =>
  rows.length === 0
    ? []
    : [
        {
          name: UNSEEN,
          data: { values: [...rows] },
          mark: { type: 'rect', ...telling, opacity: 0 },
          encoding: { y, ...withSentence },
        } as ChartLayer,
      ];
