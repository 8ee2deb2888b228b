/** The few values that move the answer most, to be typed over; and one machine more or fewer. */
import { usePage } from '../context.js';
import { Box } from '../forms/box.js';
import { LeadBoxes } from '../forms/lead-boxes.js';
import type { FormField } from '../../scenario/input-forms.js';

/** Always at hand, as they are what a house can decide. */
const DECIDED = ['seats.count', 'clearing.every', 'level'];
/** Until it is known what moves the answer here. */
const USUALLY = ['arrivals.peak.guests', 'guests.staysIn', 'guests.dwell', 'washing.partLoadWait'];
const MOST_MOVERS = 4;
const MOST_MACHINES = 12;

/** A price moves the cost in plain proportion; nobody needs a simulation to see that. */
const isPrice = (path: string): boolean => /^ware\..*\.price$/.test(path);

export function Boxes() {
  const { state, words, formats, actions } = usePage();
  const { view, groups, swings, mistakes, look, text } = state;
  const sent = state.given.scenario;
  if (view === null || groups.length === 0) return null;
  const say = words.page;
  const fields = new Map(
    groups
      .flatMap(({ parts }) => parts.flatMap((part) => part.fields))
      .map((field) => [field.path, field]),
  );
  const found = (paths: readonly string[]): FormField[] =>
    paths.flatMap((path) => fields.get(path) ?? []);
  const movers =
    swings.length === 0
      ? found(USUALLY)
      : found(
          swings
            .filter(({ path, money }) => money > 0 && !DECIDED.includes(path) && !isPrice(path))
            .map(({ path }) => path),
        ).slice(0, MOST_MOVERS);
  const hintOf = ({ path }: FormField): { hint: string } | object => {
    const swing = swings.find((one) => one.path === path);
    return swing === undefined || swing.money === 0
      ? {}
      : { hint: say.moves(formats.money(swing.money)) };
  };
  const machines = view.machines;
  const setMachines = (text: string): boolean => {
    const wanted = Number(text);
    if (machines === null || !/^\d{1,2}$/.test(text.trim()) || wanted < 1 || wanted > MOST_MACHINES)
      return false;
    const at = ['washing', 'machines'];
    if (wanted > machines.length)
      actions.edit(
        Array.from({ length: wanted - machines.length }, (_, index) => ({
          kind: 'add',
          path: [...at, machines.length + index],
          value: machines.at(-1),
        })),
      );
    else
      actions.edit(
        Array.from({ length: machines.length - wanted }, (_, index) => ({
          kind: 'remove',
          path: [...at, machines.length - 1 - index],
        })),
      );
    return true;
  };
  return (
    <section>
      <h2>{say.boxesHead}</h2>
      <p>{say.boxesIntro}</p>
      <LeadBoxes
        fields={[...movers, ...found(DECIDED)].map((field) => ({ field, ...hintOf(field) }))}
        problems={mistakes}
        units={look.units}
        words={words}
        onEdit={(edits) => actions.edit(edits)}
      />
      {machines === null ? null : (
        <div class="boxes">
          <Box
            id="machines"
            label={say.machines}
            value={String(machines.length)}
            onCommit={setMachines}
          />
        </div>
      )}
      {sent === null ||
      (text === sent.text && state.options.stock === sent.options.stock) ? null : (
        <p class="row">
          <button
            type="button"
            onClick={() => actions.replace(sent.text, sent.fileName, sent.options)}
          >
            {say.backToSent}
          </button>
        </p>
      )}
    </section>
  );
}
