/** Who runs which chunk: a word a chunk that all threads see. Whoever turns it first runs the chunk. */
export type Claims = Int32Array<SharedArrayBuffer>;

export const claimsFor = (chunks: number): Claims =>
  new Int32Array(new SharedArrayBuffer(4 * chunks));

/** @returns whether the chunk was free and is now ours */
export const claim = (claims: Claims, chunk: number): boolean =>
  Atomics.compareExchange(claims, chunk, 0, 1) === 0;
