/** Settings as somebody types them in boxes. */
import { expect, test } from 'vitest';
import { guide } from '../../src/questions/guide/head.js';
import { SettingError, settingsTyped } from '../../src/questions/settings.js';

test('mean what they mean on the command line, and an empty box says nothing', () => {
  const typed = { seats: ' 20, 30 ', takeaway: '' };
  expect(settingsTyped(guide.settings, typed)).toEqual({ seats: [20, 30] });
  expect(settingsTyped(guide.settings, { takeaway: '30, 60 %' })).toEqual({
    takeaway: [0.3, 0.6],
  });
});

test('everything that will not do is said at once', () => {
  const ask = (): unknown => settingsTyped(guide.settings, { seats: 'many', takeaway: '120' });
  expect(ask).toThrow(SettingError);
  expect(ask).toThrow(/"many" is not a whole number.*\n.*"120" is not a percentage/);
});
