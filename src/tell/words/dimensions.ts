/** A change of one measure of a piece: "rim 1.9 mm wider", to follow "with its" or to stand alone. */
const measures = {
  rim: { name: 'rim', more: 'wider', less: 'narrower' },
  handle: { name: 'handle', more: 'longer', less: 'shorter' },
  handleWidth: { name: 'handle', more: 'wider', less: 'narrower' },
  height: { name: 'height', more: 'more', less: 'less' },
  depth: { name: 'depth', more: 'more', less: 'less' },
} as const;

export type Dimension = keyof typeof measures;

/** @param by length with its unit */
export const changedMeasure = (dimension: Dimension, by: string, how: 'more' | 'less'): string =>
  `${measures[dimension].name} ${by} ${measures[dimension][how]}`;
