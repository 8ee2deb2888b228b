/** What a site with a till of its own starts from: the base with the demand that the till shows, as `cuptide till` fits it. */
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { readScenario } from '../../scenario/read-scenario.js';
import type { Result } from '../result.js';
import type { GivenFile } from '../settings.js';
import { askTill } from '../till/ask.js';
import { baseOf, type Base } from './site.js';

/** @param scenario the base as its file has it @param seed of the study */
export async function baseWithTill(
  scenario: GivenFile,
  till: GivenFile,
  map: GivenFile,
  seed: string,
): Promise<Result<Base>> {
  const outName = `${scenario.name} with ${till.name}`;
  const reply = await askTill({
    map,
    scenario,
    sales: { name: till.name, open: () => once(till.bytes) },
    outName,
  });
  if (!reply.ok) return reply;
  const opened = readScenario(reply.value.text, outName, { piecesPerRack: piecesPerRackOf });
  return opened.ok ? { ok: true, value: baseOf(opened, seed) } : opened;
}

// oxlint-disable-next-line require-await
async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}
