/** At the head: who reads, in which units, and the sender's name and logo. */
import * as english from '../../tell/english.js';
import { useState } from 'preact/hooks';
import { safeLocale } from '../../tell/format.js';
import { usePage } from '../context.js';
import type { Reader } from '../store.js';

const LARGEST_LOGO = 200_000;
const READERS: readonly Reader[] = ['owner', 'consultant', 'trainer'];
/** Ways of writing numbers, money and clock times. */
const LOCALES = [
  'en-IE',
  'en-GB',
  'en-US',
  'de-DE',
  'de-CH',
  'fr-FR',
  'es-ES',
  'it-IT',
  'nl-NL',
  'pt-PT',
  'pl-PL',
  'sv-SE',
  'ja-JP',
];

export function Head() {
  const { state, store, actions } = usePage();
  const { reader, look, sender } = state;
  const say = english.page;
  const [wrong, setWrong] = useState<string | null>(null);
  const takeLogo = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    const wanted = /^image\/(png|jpeg|svg\+xml)$/.test(file.type);
    const logo = wanted && file.size <= LARGEST_LOGO ? await picture(file) : null;
    setWrong(logo !== null ? null : file.size > LARGEST_LOGO ? say.logoTooLarge : say.logoNone);
    if (logo !== null) store.set({ sender: { ...sender, logo } });
  };
  return (
    <header>
      <div class="head">
        <fieldset>
          <legend>{say.readAs}</legend>
          {READERS.map((one) => (
            <label key={one}>
              <input
                type="radio"
                name="reader"
                checked={reader === one}
                onChange={() => store.set({ reader: one })}
              />{' '}
              {say.readers[one]}
            </label>
          ))}
        </fieldset>
        <details>
          <summary>{say.lookSummary}</summary>
          <div class="boxes">
            <div class="box">
              <label for="look-units">{say.unitsLabel}</label>
              <select
                id="look-units"
                value={look.units}
                onChange={(event) =>
                  actions.look({ units: event.currentTarget.value === 'us' ? 'us' : 'metric' })
                }
              >
                <option value="metric">{say.units.metric}</option>
                <option value="us">{say.units.us}</option>
              </select>
            </div>
            <div class="box">
              <label for="look-locale">{say.localeLabel}</label>
              <select
                id="look-locale"
                value={look.locale ?? ''}
                onChange={(event) =>
                  actions.look({
                    locale: event.currentTarget.value === '' ? null : event.currentTarget.value,
                  })
                }
              >
                <option value="">{say.localeOfScenario}</option>
                {LOCALES.map((tag) => (
                  <option key={tag} value={tag}>
                    {localeName(tag, english.language)}
                  </option>
                ))}
              </select>
            </div>
            <div class="box">
              <label for="sender-name">{say.senderLabel}</label>
              <input
                id="sender-name"
                type="text"
                class="wide"
                maxLength={120}
                value={sender.name}
                onInput={(event) =>
                  store.set({ sender: { ...sender, name: event.currentTarget.value } })
                }
              />
            </div>
            <div class="box">
              <label for="sender-logo">{say.logoLabel}</label>
              <input
                id="sender-logo"
                type="file"
                accept="image/png,image/jpeg,image/svg+xml"
                aria-describedby="logo-wrong"
                onChange={(event) => void takeLogo(event.currentTarget.files?.[0])}
              />
              <p class="wrong" id="logo-wrong" role="alert">
                {wrong}
              </p>
            </div>
            {sender.logo === null ? null : (
              <button
                type="button"
                onClick={() => store.set({ sender: { ...sender, logo: null } })}
              >
                {say.logoRemove}
              </button>
            )}
          </div>
        </details>
      </div>
    </header>
  );
}

/** What prints at the head of the letter. */
export function Sender() {
  const { state } = usePage();
  const { name, logo } = state.sender;
  const day = new Intl.DateTimeFormat(safeLocale(state.look.locale ?? state.view?.locale ?? 'en'), {
    dateStyle: 'long',
  }).format(new Date());
  return (
    <>
      {name === '' && logo === null ? null : (
        <div class="sender">
          {logo === null ? null : <img src={logo} alt={english.page.logoAlt} />}
          <bdi>{name}</bdi>
        </div>
      )}
      <p class="on-paper">{day}</p>
    </>
  );
}

const localeName = (tag: string, language: string): string =>
  new Intl.DisplayNames([language], { type: 'language' }).of(tag) ?? tag;

/** The file as a data: address; null where no browser could show it, whatever its name says. */
async function picture(file: File): Promise<string | null> {
  const shown = new Image();
  shown.src = await dataAddress(file);
  return shown.decode().then(
    () => shown.src,
    () => null,
  );
}

function dataAddress(file: File): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(new Error(reader.error?.message));
    reader.readAsDataURL(file);
  });
}
