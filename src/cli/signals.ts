/**
 * Ctrl-C and SIGTERM. A thread that reads, or searches a rack, cannot look up to see a signal: as long as nothing would
 * be left behind, the system ends the command at once, as it does any program that says nothing of signals. Our own
 * ending is there while days are run, which look up often, and while files are written.
 */
import { EXIT } from './mistakes.js';

// In an object, as what is bundled makes a constant of every name at the top.
const now = { cleanUp: (): void => {}, holders: 0, kept: false };

/** Leave at once: what is half written goes, and the next prompt begins on a line of its own. */
export function leave(code: number): never {
  now.cleanUp();
  if (process.stderr.isTTY) process.stderr.write('\n');
  process.exit(code);
}

const interrupted = (): never => leave(EXIT.interrupted);
const terminated = (): never => leave(EXIT.terminated);

/** Signals end the command by `leave` from now on. @param gone removes what must not be left */
export function holdSignals(gone: () => void = now.cleanUp): void {
  now.cleanUp = gone;
  now.holders += 1;
  if (now.holders > 1) return;
  process.on('SIGINT', interrupted);
  process.on('SIGTERM', terminated);
}

/** The system ends the command again, unless another holds; a signal that has come meanwhile is heard first. */
export async function releaseSignals(): Promise<void> {
  await new Promise((resolve) => setImmediate(resolve));
  now.holders -= 1;
  if (now.holders > 0) return;
  process.off('SIGINT', interrupted);
  process.off('SIGTERM', terminated);
}

/** Something is there now that must not be left: signals are held to the end. @param gone removes it */
export function keepSignals(gone: () => void): void {
  if (!now.kept) holdSignals(gone);
  now.kept = true;
}
