/** Party sizes moved to another mean: each share times e^(θ·size), which keeps the shape of the rest. */
import { exp } from '../elementary/exp.js';

export const meanSize = (shares: readonly number[]): number =>
  shares.reduce((sum, share, at) => sum + share * (at + 1), 0);

/** @param mean moved no further than the smallest and the largest size there are */
export function tilted(shares: readonly number[], mean: number): number[] {
  const at = (theta: number): number[] => {
    const raw = shares.map((share, size) => share * exp(theta * (size + 1)));
    const all = raw.reduce((sum, one) => sum + one, 0);
    return raw.map((one) => one / all);
  };
  let [low, high] = [-5, 5];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (meanSize(at(middle)) < mean) low = middle;
    else high = middle;
  }
  return at((low + high) / 2);
}
