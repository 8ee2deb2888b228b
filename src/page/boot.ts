/**
 * The first script of the letter: it unpacks the page's own and starts it. Plain enough for a browser that is too old
 * for the rest, so that the letter can say so.
 */
import { inflated } from './packed-text.js';

const asleep = (): void => {
  const sentence = document.getElementById('asleep');
  if (sentence !== null && !('ready' in document.documentElement.dataset)) sentence.hidden = false;
};

addEventListener('error', asleep);

async function boot(): Promise<void> {
  const script = document.createElement('script');
  script.textContent = await inflated(document.getElementById('page')?.textContent ?? '');
  document.body.append(script);
  // It has run; a letter that is saved must not carry it a second time.
  script.remove();
}

boot().catch(asleep);
