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
    throw asMistake(error, name);
  }
}

/** A setting that does not fit, under the name of its option; anything else as it is. */
export function asMistake(error: unknown, name: string | null = null): unknown {
  if (!(error instanceof SettingError)) return error;
  const option = error.setting ?? name;
  return new MistakeError(
    error.message
      .split('\n')
      .map((line) => (option === null ? line : `--${option}: ${line}`))
      .join('\n'),
  );
}
