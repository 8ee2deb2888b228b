/**
 * An engine: a worker that holds the whole study and answers what the page asks. Two run side by side:
 * one answers changes at once on few days, the other works out the certified answer. Where the machine has more
 * cores, others run days for it.
 */
import { isTooMuch } from '../../cafe/too-much.js';
import type { Ask, Answered, Reply, Request } from '../messages.js';
import { answerAsk, type Engine } from './answer-ask.js';
import { SettingError } from '../../questions/settings.js';
import { NoAnswer } from './questions.js';
import { serveDays, Stopped } from './shared-days.js';

const engine: Engine = { version: '', neighbours: [] };
/** The ask under way, if any; a newer one ends it. */
let latest = 0;

const post = (id: number, reply: Reply): void => self.postMessage({ id, reply } satisfies Answered);

self.onmessage = ({ data }: MessageEvent<Ask>) => {
  const { id, request } = data;
  if (request.kind !== 'join' && request.kind !== 'stop') return void answer(id, request);
  if (request.kind === 'join') join(request);
  else latest = id;
  post(id, { kind: 'done' });
};

function join({ port, version }: Extract<Request, { kind: 'join' }>): void {
  engine.version = version;
  engine.neighbours.push(port);
  serveDays(port);
}

async function answer(
  id: number,
  request: Exclude<Request, { kind: 'join' | 'stop' }>,
): Promise<void> {
  latest = id;
  const wanted = (): boolean => latest === id;
  const say = (reply: Reply): void => {
    if (wanted()) post(id, reply);
  };
  try {
    await answerAsk(engine, request, wanted, say);
  } catch (error) {
    if (error instanceof NoAnswer)
      say({
        kind: 'mistakes',
        mistakes: error.problems.map(({ path, line, message }) => ({ path, line, message })),
      });
    else if (isTooMuch(error) || error instanceof SettingError)
      say({ kind: 'mistakes', mistakes: [{ path: '', line: 0, message: error.message }] });
    else if (!(error instanceof Stopped))
      say({ kind: 'fault', message: error instanceof Error ? error.message : String(error) });
  }
  // Said of runs given up too, so that the page knows the engine is free.
  post(id, { kind: 'done' });
}
