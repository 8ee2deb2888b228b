/** Every input in boxes, and the whole file as text for what boxes cannot say. */
import * as english from '../../tell/english.js';
import { usePage } from '../context.js';
import { UntakenContext } from '../forms/draft.js';
import { InputForms } from '../forms/input-forms.js';
import { ScenarioText } from '../forms/scenario-text.js';

export function Forms() {
  const { state, actions } = usePage();
  const { view, groups, mistakes, look, text, fileName, options } = state;
  if (view === null) return null;
  return (
    <section>
      <h2>{english.page.formsHead}</h2>
      <details class="ask" id="all-inputs">
        <summary>{english.page.formsBoxes}</summary>
        <UntakenContext.Provider value={state.untaken}>
          <InputForms
            groups={groups}
            problems={mistakes}
            units={look.units}
            onEdit={(place, edits) => actions.edit(place, edits)}
          />
        </UntakenContext.Provider>
      </details>
      <details class="ask" id="whole-file">
        <summary>{english.page.formsText}</summary>
        <ScenarioText
          text={text}
          problems={mistakes}
          onText={(typed) => actions.replace(typed, fileName, options)}
        />
      </details>
    </section>
  );
}
