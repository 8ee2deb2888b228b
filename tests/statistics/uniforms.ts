import seedrandom from 'seedrandom';

/** A reproducible source of numbers in [0, 1) for tests. */
export function uniforms(seed: number): () => number {
  return seedrandom.tychei(`test ${seed}`);
}
