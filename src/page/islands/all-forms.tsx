/** Every input in boxes, and the whole file as text for what boxes cannot say. */
import { usePage } from '../context.js';
import { InputForms } from '../forms/input-forms.js';
import { ScenarioText } from '../forms/scenario-text.js';

export function Forms() {
  const { state, words, actions } = usePage();
  const { view, groups, mistakes, look, text, fileName, options } = state;
  if (view === null) return null;
  return (
    <section>
      <h2>{words.page.formsHead}</h2>
      <details class="ask" id="all-inputs">
        <summary>{words.page.formsBoxes}</summary>
        <InputForms
          groups={groups}
          problems={mistakes}
          units={look.units}
          words={words}
          onEdit={(edits) => actions.edit(edits)}
        />
      </details>
      <details class="ask" id="whole-file">
        <summary>{words.page.formsText}</summary>
        <ScenarioText
          text={text}
          problems={mistakes}
          words={words}
          onText={(typed) => actions.replace(typed, fileName, options)}
        />
      </details>
    </section>
  );
}
