/** Other pieces than those needed: type them, and the letter says how safe they are. */
import * as english from '../../tell/english.js';
import { useEffect, useRef, useState } from 'preact/hooks';
import { usePage } from '../context.js';

const MOST_PIECES = 20_000;

/** An empty box is no number either: the answer waits until something stands in it. */
const isWrong = (text: string): boolean =>
  !/^\d{1,5}$/.test(text.trim()) || Number(text) > MOST_PIECES;

export function Pieces() {
  const { state, actions, formats } = usePage();
  const { view } = state;
  const say = english.page;
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  // What is typed stays, whatever answer comes, until another stock is asked for than was typed here.
  const asked = useRef(state.options.stock);
  useEffect(() => {
    if (state.options.stock !== asked.current) setTyped({});
    asked.current = state.options.stock;
  }, [state.options.stock]);
  if (view === null) return null;
  const shown = (id: string, pieces: number): string => typed[id] ?? String(pieces);
  const change = (id: string, text: string): void => {
    const next = { ...typed, [id]: text };
    setTyped(next);
    const stock = view.ware.map(
      ({ id: ware, pieces }) => [ware, next[ware] ?? String(pieces)] as const,
    );
    if (stock.some(([, pieces]) => isWrong(pieces))) return;
    asked.current = Object.fromEntries(stock.map(([ware, pieces]) => [ware, Number(pieces)]));
    actions.tryStock(asked.current);
  };
  return (
    <details id="pieces">
      <summary>{say.piecesHead}</summary>
      <p>{say.piecesIntro}</p>
      <div class="boxes">
        {view.ware.map(({ id, name, pieces }) => (
          <div class="box" key={id}>
            <label for={`pieces-${id}`}>
              <bdi>{name}</bdi>
            </label>
            <input
              id={`pieces-${id}`}
              type="number"
              min="0"
              max={MOST_PIECES}
              step="1"
              value={shown(id, pieces)}
              aria-invalid={isWrong(shown(id, pieces))}
              aria-describedby={`wrong-${id}`}
              onInput={(event) => change(id, event.currentTarget.value)}
            />
            <p class="wrong" id={`wrong-${id}`} role="alert">
              {isWrong(shown(id, pieces)) ? say.piecesWrong(formats.count(MOST_PIECES)) : ''}
            </p>
          </div>
        ))}
      </div>
      {view.stockGiven ? (
        <p class="row">
          <button type="button" onClick={() => actions.tryStock(null)}>
            {say.piecesBack}
          </button>
        </p>
      ) : null}
    </details>
  );
}
