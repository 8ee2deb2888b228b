/** One part of a table to fill in: a row of boxes each, and beneath a row what is wrong with it. */
import { useState } from 'preact/hooks';
import { cellKey, rowsOf, type FillInPart } from '../../questions/fill-in.js';
import * as english from '../../tell/english.js';
import { usePage } from '../context.js';
import type { Mistake } from '../messages.js';

export interface PartProps {
  readonly part: FillInPart;
  /** Whether it stands open at first. */
  readonly open: boolean;
  /** Rows added. */
  readonly more: number;
  /** What was typed; boxes write into it as they are typed in. */
  readonly typed: Record<string, string>;
  /** By row. */
  readonly mistakes: ReadonlyMap<number, readonly Mistake[]>;
  onMore(): void;
}

/** Its boxes are made once it is opened: a sheet has hundreds. */
export function FillInTable(props: PartProps) {
  const { part, mistakes } = props;
  const [open, setOpen] = useState(props.open);
  const isOpen = open || mistakes.size > 0;
  return (
    <details open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{part.title}</summary>
      <p class="small">{part.how}</p>
      {isOpen ? <Boxes {...props} /> : null}
    </details>
  );
}

function Boxes({ part, more, typed, mistakes, onMore }: PartProps) {
  const { formats } = usePage();
  const say = english.fillIn;
  const { id, title, columns } = part;
  const rows = rowsOf(part, more);
  const labelled = rows.some(({ label }) => label !== null);
  return (
    <>
      <div class="scroll" role="group" tabIndex={0} aria-label={title}>
        <table class="fill-in">
          <caption class="unseen">{title}</caption>
          <thead>
            <tr>
              {labelled ? null : <td />}
              {columns.map(({ name, label }) => (
                <th key={name} scope="col">
                  {label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ label, cells }, row) => {
              const wrong = mistakes.get(row) ?? [];
              const name = label ?? say.row(formats.count(row + 1));
              const problem = `${id}-${row}-problem`;
              return [
                <tr key={row}>
                  {labelled && label === null ? null : <th scope="row">{name}</th>}
                  {cells.map((cell, column) => {
                    const { name: title, label: head } = columns[column]!;
                    if (column === 0 && label !== null) return null;
                    if (cell === null) return <td key={title} class="shut" />;
                    const key = cellKey(id, row, column);
                    const isWrong = wrong.some(({ path }) => path === title);
                    return (
                      <td key={title}>
                        <input
                          type="text"
                          data-cell={`${row}/${title}`}
                          class={column === 0 ? 'first' : ''}
                          aria-label={say.cell(name, head)}
                          aria-invalid={isWrong}
                          aria-describedby={isWrong ? problem : undefined}
                          autocomplete="off"
                          spellcheck={false}
                          value={typed[key] ?? cell}
                          onInput={(event) => (typed[key] = event.currentTarget.value)}
                        />
                      </td>
                    );
                  })}
                </tr>,
                wrong.length === 0 ? null : (
                  <tr key={problem}>
                    <td class="wrong" colSpan={columns.length + 1} id={problem}>
                      {wrong.map(({ path, message }) => (
                        <p key={path + message}>
                          {say.cell(name, columns.find((one) => one.name === path)?.label ?? path)}:{' '}
                          {message}
                        </p>
                      ))}
                    </td>
                  </tr>
                ),
              ];
            })}
          </tbody>
        </table>
      </div>
      {labelled ? null : (
        <p>
          <button type="button" class="plain" onClick={onMore}>
            {say.more}
          </button>
        </p>
      )}
    </>
  );
}
