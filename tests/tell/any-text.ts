/** Any text at all: every UTF-16 unit is as likely, controls and half pairs included, with a share of plain letters. */
import fc from 'fast-check';

const unit = fc.oneof(
  fc.integer({ min: 0, max: 0xff }),
  fc.integer({ min: 0x2000, max: 0x206f }),
  fc.integer({ min: 0xd800, max: 0xdfff }),
  fc.integer({ min: 0, max: 0xffff }),
);

export const anyText = (most = 60): fc.Arbitrary<string> =>
  fc.array(unit, { maxLength: most }).map((units) => String.fromCharCode(...units));
