/** Milliseconds by a clock that never goes back. Node loads much for `performance.now()`, and this it has at hand. */
export const clockMs = (): number => process.uptime() * 1000;
