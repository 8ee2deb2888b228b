/**
 * How far the answer has come, and what keeps it from coming. What is seen may count days; what is
 * read out is one sentence when work begins and the new answer when it is certified.
 */
import * as english from '../../tell/english.js';
import { useEffect, useState } from 'preact/hooks';
import { usePage } from '../context.js';
import { Restore } from './restore.js';

/** Quiet time before anything is read out, ms: a reader who types is not talked over. */
const QUIET_MS = 700;

export function Status() {
  const { state, formats, actions } = usePage(true);
  const { phase, view, mistakes, fault, progress, answer, waiting } = state;
  const say = english.page;
  const { count } = formats;
  const days = view?.days ?? null;
  const underWay = phase === 'working' || phase === 'provisional';
  const sentence = (): string => {
    if (phase === 'blank') return '';
    if (phase === 'as-sent') return say.asSent;
    if (phase === 'working' || days === null || view === null) return say.working;
    if (state.options.listed !== undefined) return say.onListed(count(state.options.listed.length));
    if (phase === 'provisional')
      return view.stockGiven
        ? say.provisionalAtStock(count(days.chosenOn))
        : say.provisional(count(days.chosenOn), count(days.certifiedOn));
    return view.stockGiven
      ? say.certifiedAtStock(count(days.chosenOn))
      : say.certified(count(days.chosenOn), count(days.certifiedOn));
  };
  return (
    <div class="status" data-phase={phase}>
      <p>
        {phase === 'provisional' ? (
          <strong class="provisional">{say.provisionalMark}</strong>
        ) : null}
        {sentence()}
        {progress === 0 || !underWay ? '' : ` ${say.progress(count(progress))}`}
        {waiting
          ? ` ${underWay || answer === null ? say.waiting : say.waitingForSections}`
          : ''}{' '}
        {underWay ? (
          <button type="button" class="plain" onClick={() => actions.cancel()}>
            {say.cancel}
          </button>
        ) : null}
      </p>
      <Restore />
      <ReadOut working={underWay} settled={answer !== null} />
      {mistakes.length === 0 ? null : (
        <div role="alert" class="wrong">
          <p>{say.mistakesHead}</p>
          <ul>
            {mistakes.slice(0, 8).map(({ path, line, message }) => (
              <li key={`${line} ${path} ${message}`}>
                {[say.mistakeAt(line === 0 ? null : count(line), path), message]
                  .filter((text) => text !== '')
                  .join(': ')}
              </li>
            ))}
          </ul>
        </div>
      )}
      {fault === null ? null : (
        <p role="alert" class="wrong">
          {say.fault(fault)}
        </p>
      )}
    </div>
  );
}

/** For those who listen. Nothing is said of the letter as it was opened. */
function ReadOut({ working, settled }: { readonly working: boolean; readonly settled: boolean }) {
  const [said, setSaid] = useState<string | null>(null);
  useEffect(() => {
    if (!working && !(settled && said !== null)) return;
    const timer = setTimeout(
      () =>
        setSaid(
          working
            ? english.page.working
            : (document.querySelector('[data-part=lead]')?.textContent ?? ''),
        ),
      QUIET_MS,
    );
    return () => clearTimeout(timer);
  }, [working, settled]);
  return (
    <p role="status" class="unseen">
      {said}
    </p>
  );
}
