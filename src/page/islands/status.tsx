/** How far the answer has come, and what keeps it from coming. */
import { usePage } from '../context.js';

export function Status() {
  const { state, words, formats } = usePage();
  const { phase, view, mistakes, fault, progress } = state;
  const say = words.page;
  const { count } = formats;
  const days = view?.days ?? null;
  const sentence = (): string => {
    if (phase === 'blank') return '';
    if (phase === 'as-sent') return say.asSent;
    if (phase === 'working' || days === null || view === null) return say.working;
    if (state.options.listed !== undefined) return say.onListed(count(state.options.listed.length));
    if (phase === 'provisional') {
      const so = view.stockGiven
        ? say.provisionalAtStock(count(days.chosenOn))
        : say.provisional(count(days.chosenOn), count(days.certifiedOn));
      return progress === 0 ? so : `${so} ${say.progress(count(progress))}`;
    }
    return view.stockGiven
      ? say.certifiedAtStock(count(days.chosenOn))
      : say.certified(count(days.chosenOn), count(days.certifiedOn));
  };
  return (
    <div class="status" data-phase={phase}>
      <p role="status">{sentence()}</p>
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
