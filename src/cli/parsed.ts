/** What was typed behind an option, read as its setting says. */
import { parseSetting, SettingError, type Setting } from '../questions/settings.js';
import { MistakeError } from './mistakes.js';

/** @throws MistakeError that names the option */
export function parsed(
  name: string,
  setting: Setting,
  text: string,
): ReturnType<typeof parseSetting> {
  try {
    return parseSetting(setting, text);
  } catch (error) {
    if (!(error instanceof SettingError)) throw error;
    throw new MistakeError(
      error.message
        .split('\n')
        .map((line) => `--${name}: ${line}`)
        .join('\n'),
    );
  }
}
