/** Take it along: open and save scenarios, answers and the letter itself. Nothing leaves but a certified answer. */
import * as english from '../../tell/english.js';
import { useEffect, useState } from 'preact/hooks';
import { usePage } from '../context.js';
import { Beside } from './beside.js';
import { madeHere } from '../made-here.js';
import { letterAsFile, save } from '../saving.js';
import { stemOf } from '../file-name.js';
import type { PageState, Whole } from '../store.js';
import { isUnsaved, sameOptions, settledOf } from '../store.js';
import type { Given } from '../../letter/live.js';

const LARGEST = 1_000_000;
const SPREADSHEET = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

export function Files() {
  const { state, store, actions } = usePage();
  const { view } = state;
  const say = english.page;
  const [wrong, setWrong] = useState<string | null>(null);
  const stem = stemOf(view?.name ?? state.fileName);
  const open = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    const problem = /\.html?$/i.test(file.name)
      ? say.isLetter
      : file.size > LARGEST
        ? say.tooLarge
        : null;
    setWrong(problem);
    if (problem === null) actions.replace(await file.text(), file.name);
  };
  const keep = (): void => store.set({ kept: store.state.text });
  /** Saves something of the certified answer, once it is there. */
  const certified =
    (act: (settled: Whole, now: PageState) => void, all = false) =>
    (): void =>
      actions.onceCertified(() => {
        const settled = settledOf(store.state);
        if (settled !== null) act(settled, store.state);
      }, all);
  useEffect(() => {
    const ask = (event: BeforeUnloadEvent): void => {
      if (isUnsaved(store.state)) event.preventDefault();
    };
    addEventListener('beforeunload', ask);
    return () => removeEventListener('beforeunload', ask);
  }, []);
  return (
    <section class="files">
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
          onClick={() =>
            actions.onceTaken(() => {
              save(`${stem}.yaml`, 'application/yaml', store.state.text);
              keep();
            })
          }
        >
          {say.saveScenario}
        </button>
        <button
          type="button"
          disabled={view === null}
          onClick={certified((settled, { given }) =>
            save(
              `${stem}.json`,
              'application/json',
              `${JSON.stringify({ ...settled.answer, ...madeHere(settled, given) }, null, 1)}\n`,
            ),
          )}
        >
          {say.saveAnswer}
        </button>
        <button
          type="button"
          disabled={view === null}
          onClick={certified(() =>
            actions.file('workbook', (ending, bytes) =>
              save(`${stem}.${ending}`, SPREADSHEET, bytes),
            ),
          )}
        >
          {say.saveWorkbook}
        </button>
        <button
          type="button"
          disabled={view === null}
          onClick={certified((settled, now) => {
            save(`${stem}.html`, 'text/html', letterAsFile(asSent(settled, now)));
            keep();
            store.set({ keptBeside: now.beside, keptCounts: now.counts });
          })}
        >
          {say.saveLetter}
        </button>
        <button
          type="button"
          disabled={view === null}
          onClick={certified(() => window.print(), true)}
        >
          {say.print}
        </button>
      </div>
      <Beside />
    </section>
  );
}

/** The page as the next reader is to find it. */
function asSent(
  { fileName, text, options, answer, curves }: Whole,
  { given, reader, look, sender, beside, counts }: PageState,
): Given {
  const { scenario: sent } = given;
  const same = sent !== null && sent.text === text && sameOptions(sent.options, options);
  return {
    ...given,
    scenario: {
      fileName,
      text,
      options,
      answer,
      curves,
      ...(same && sent.habits !== undefined ? { habits: sent.habits } : {}),
      ...(same && sent.made !== undefined ? { made: sent.made } : {}),
      ...(Object.keys(beside).length === 0 ? {} : { beside }),
      ...(counts === null ? {} : { counts }),
    },
    reader,
    look,
    sender,
  };
}
