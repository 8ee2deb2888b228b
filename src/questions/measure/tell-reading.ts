/** What a filled sheet says, as blocks, with pictures of fitted against observed. */
import { fold, heading, list, paragraphs, table, type Block } from '../../tell/block.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import { inputName } from '../../tell/input-name.js';
import type { Measured, SheetReading } from './answer.js';
import { sharesCharts } from './charts/counted-shares.js';
import { goodness, lawCharts } from './charts/fitted-laws.js';
import { rangeText } from './tell-plan.js';
import { say } from './words.js';
import { widthOf } from './worth.js';

export function readingBlocks(reading: SheetReading, context: ReportContext): Block[] {
  const formats = formatsFor(context);
  const { measured, kept, notes, dates } = reading;
  const sheets = say.sheetOf(dates);
  const fitted = measured.filter(({ law }) => law !== null);
  return [
    heading(say.readHeading),
    paragraphs(
      [
        measured.length === 0
          ? say.readNone(sheets)
          : say.readLead(formats.count(measured.length), sheets),
      ],
      'lead',
    ),
    paragraphs(
      measured.length === 0
        ? []
        : [
            say.readFactor(
              rangeText(reading.before, formats),
              rangeText(reading.after, formats),
              formats.percent(reading.factor, 0),
            ),
            say.another(
              rangeText(reading.another, formats),
              formats.percent(anotherFactor(reading), 0),
            ),
          ],
    ),
    ...mornings(reading, formats),
    table({
      caption: say.measured,
      columns: [
        { title: say.input, as: 'words' },
        { title: say.n, as: 'figures' },
        { title: say.value, as: 'figures' },
        { title: say.interval, as: 'figures' },
        { title: say.spread, as: 'figures', spare: true },
        { title: say.law, as: 'words', spare: true },
      ],
      rows: measured.map((one) => [
        inputName(one.path),
        formats.count(one.n),
        amount(one.mean, one, formats),
        one.low === null || one.high === null
          ? '–'
          : `${amount(one.low, one, formats)} to ${amount(one.high, one, formats)}`,
        one.sd === null ? '–' : amount(one.sd, one, formats),
        one.law?.fit.chosen.law ?? '–',
      ]),
    }),
    {
      kind: 'picture',
      pictures: [...lawCharts(measured, context), ...sharesCharts(measured, context)],
    },
    fold(say.laws, [
      table({
        caption: say.laws,
        columns: [
          { title: say.input, as: 'words' },
          { title: say.law, as: 'words' },
          { title: say.fit, as: 'words' },
        ],
        rows: fitted.map(({ path, law }) => [
          inputName(path),
          law!.fit.tried.map(({ law: name, aicc }) => `${name} ${aicc.toFixed(1)}`).join(', '),
          law!.fit.fit === null
            ? '–'
            : say.fits(
                goodness(law!.fit),
                formats.decimal(law!.fit.fit.distance, 2),
                formats.decimal(law!.fit.fit.p, 2),
              ),
        ]),
      }),
    ]),
    list(
      kept.map(({ path, why }) => `${inputName(path)}: ${why}.`),
      say.kept,
    ),
    list(notes, say.notes),
    paragraphs(measured.length === 0 ? [] : [say.written]),
  ];
}

/** Where mornings differ, or that they agree; nothing of a single one. */
function mornings({ compared, differ }: SheetReading, formats: Formats): Block[] {
  if (compared === null || compared === 0) return [];
  if (differ.length === 0) return [paragraphs([say.agree(compared), say.dayFactor])];
  return [
    list(
      [
        ...differ.map((one) =>
          say.differ(
            inputName(one.path),
            one.mornings
              .map(({ date, mean }) => `${amount(mean, one, formats)} on ${date}`)
              .join(', '),
            one.p < 0.001 ? 'below 0.001' : formats.decimal(one.p, 3),
          ),
        ),
        say.differKinds,
        say.dayFactor,
      ],
      say.differHeading,
    ),
  ];
}

function anotherFactor({ before, another }: SheetReading): number {
  return widthOf(before) === 0 ? 1 : widthOf(another) / widthOf(before);
}

function amount(value: number, { unit }: Pick<Measured, 'unit'>, formats: Formats): string {
  switch (unit) {
    case 'share':
      return formats.percent(value, 1);
    case 'min':
      return `${formats.decimal(value)}\u00A0min`;
    case 's':
      return `${formats.count(value)}\u00A0s`;
    case 'guests':
      return formats.decimal(value, 2);
    case 'pieces':
      return Number.isInteger(value) ? formats.count(value) : formats.decimal(value, 2);
    default:
      return `${formats.count(value)}\u00A0${unit}`;
  }
}
