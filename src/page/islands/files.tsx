/** Take it along: open and save scenarios, answers and the letter itself. */
import { useState } from 'preact/hooks';
import { usePage } from '../context.js';
import type { Given } from '../../letter/live.js';
import { letterAsFile, save } from '../saving.js';
import type { View } from '../messages.js';
import type { PageState } from '../store.js';

const LARGEST = 1_000_000;
const SPREADSHEET = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

export function Files() {
  const { state, words, actions } = usePage();
  const { view } = state;
  const say = words.page;
  const [wrong, setWrong] = useState<string | null>(null);
  const stem = state.fileName.replace(/\.\w+$/, '');
  const open = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    setWrong(file.size > LARGEST ? say.tooLarge : null);
    if (file.size <= LARGEST) actions.replace(await file.text(), file.name);
  };
  return (
    <section>
      <h2>{say.filesHead}</h2>
      <p>{say.filesIntro}</p>
      <div class="box">
        <label for="open-scenario">{say.openScenario}</label>
        <input
          id="open-scenario"
          type="file"
          accept=".yaml,.yml,.json"
          aria-describedby="open-wrong"
          onChange={(event) => void open(event.currentTarget.files?.[0])}
        />
        <p class="wrong" id="open-wrong" role="alert">
          {wrong}
        </p>
      </div>
      <div class="row">
        <button
          type="button"
          disabled={state.text === ''}
          onClick={() => save(`${stem}.yaml`, 'application/yaml', state.text)}
        >
          {say.saveScenario}
        </button>
        <button
          type="button"
          disabled={state.json === null}
          onClick={() => save(`${stem}.json`, 'application/json', state.json ?? '')}
        >
          {say.saveAnswer}
        </button>
        <button
          type="button"
          disabled={view === null}
          onClick={() =>
            actions.file('workbook', (bytes) => save(`${stem}.order.xlsx`, SPREADSHEET, bytes))
          }
        >
          {say.saveWorkbook}
        </button>
        <button
          type="button"
          disabled={view === null}
          onClick={() =>
            view !== null && save(`${stem}.html`, 'text/html', letterAsFile(asSent(state, view)))
          }
        >
          {say.saveLetter}
        </button>
        <button type="button" onClick={() => window.print()}>
          {say.print}
        </button>
      </div>
    </section>
  );
}

/** The page as the next reader is to find it. */
function asSent(
  { given, fileName, text, options, reader, look, sender }: PageState,
  { ware, tightest }: View,
): Given {
  const pieces = Object.fromEntries(ware.map((one) => [one.id, one.pieces]));
  return {
    ...given,
    scenario: { fileName, text, options, pieces, tightest },
    reader,
    look,
    sender,
  };
}
