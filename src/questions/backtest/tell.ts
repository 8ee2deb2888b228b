/** A backtest as blocks. */
import { fold, heading, list, paragraphs, table, type Block } from '../../tell/block.js';
import type { ReportContext } from '../../tell/context.js';
import { digitsOf, formatsFor, type Formats } from '../../tell/format.js';
import { FEWEST_DAYS } from '../../till/fit-till.js';
import type { Backtest } from './answer.js';
import { recordedDaysChart } from './charts/recorded-days.js';
import { months } from '../till/tell-kinds.js';
import { say } from './words.js';

const chance = (p: number, formats: Formats): string =>
  p < 0.001 ? '< 0.001' : formats.decimal(p, 3);

export function backtestBlocks(found: Backtest, context: ReportContext): Block[] {
  const formats = formatsFor(context);
  const { safe, level, causes, verdict, draws, days, origins, trend } = found;
  const asked = formats.percent(level, digitsOf(level));
  const several = found.kinds.length > 0;
  return [
    heading(say.heading),
    paragraphs([say.lead(formats.percent(safe.share), formats.count(found.tried), asked)], 'lead'),
    paragraphs([
      say.interval(
        formats.percent(safe.low),
        formats.percent(safe.high),
        formats.count(found.tried),
        found.effectiveDays < found.tried ? formats.decimal(found.effectiveDays) : null,
      ),
    ]),
    paragraphs(
      [say.verdict[verdict]],
      ...(verdict === 'tooOptimistic' ? (['alarm'] as const) : []),
    ),
    paragraphs([
      `${say.busier(formats.decimal(found.busier, 2))}${trend === null ? '' : ` ${say.trend(trend.shareAWeek < 0, formats.percent(Math.abs(trend.shareAWeek)), trend.p < 0.001 ? '< 0.001' : `= ${chance(trend.p, formats)}`)}`}`,
    ]),
    ...byKind(found, formats, asked),
    { kind: 'picture', pictures: [recordedDaysChart(found, context)] },
    table({
      caption: say.causes,
      columns: [
        { title: 'Cause', as: 'words' },
        { title: 'p', as: 'figures' },
        { title: '', as: 'words' },
      ],
      rows: causes.map(({ cause, p, found: stands }) => [
        say.cause[cause],
        chance(p, formats),
        stands ? say.found : say.notFound,
      ]),
    }),
    list(proposals(found, formats, asked), say.proposal),
    table({
      caption: say.days,
      columns: [
        { title: say.day, as: 'words' },
        ...(several ? [{ title: say.kind, as: 'words' as const }] : []),
        { title: say.parties, as: 'figures' },
        { title: say.fitted, as: 'figures', spare: true },
        { title: say.safe, as: 'figures' },
        { title: say.ranOut, as: 'words' },
        { title: say.at, as: 'figures' },
      ],
      rows: origins.flatMap(({ tried }) =>
        tried.map((day) => [
          day.date,
          ...(several ? [day.kind] : []),
          formats.count(day.parties),
          formats.decimal(day.expected),
          formats.percent(day.safe, 0),
          day.ware ?? '–',
          day.minute === null ? '–' : formats.clock(day.minute),
        ]),
      ),
    }),
    fold(say.origins, [
      table({
        caption: say.origins,
        columns: [
          { title: say.from, as: 'words' },
          { title: say.fittedDays, as: 'figures' },
          { title: say.fitted, as: 'figures' },
          { title: say.stock, as: 'words' },
        ],
        rows: origins.map((origin) => [
          `${origin.from} – ${origin.to}`,
          formats.count(origin.days),
          formats.decimal(origin.partiesADay),
          origin.stock.map(({ name, pieces }) => `${name} ${pieces}`).join(', '),
        ]),
      }),
    ]),
    paragraphs([say.how(formats.count(draws), formats.count(days)), say.limits], 'small'),
  ];
}

/** The promise is made for each kind of day, so each is held to it. */
function byKind({ kinds, joined }: Backtest, formats: Formats, asked: string): Block[] {
  const together = list(
    joined.map(({ kind, days }) => say.joined(kind, formats.count(days), days < FEWEST_DAYS)),
  );
  if (kinds.length === 0) return [together];
  return [
    table({
      caption: say.byKind(asked),
      columns: [
        { title: say.kind, as: 'words' },
        { title: say.daysTried, as: 'figures' },
        { title: say.safe, as: 'figures' },
        { title: say.intervalOf, as: 'figures' },
        { title: say.enough, as: 'figures' },
      ],
      rows: kinds.map(({ kind, days, safe, factor }) => [
        kind,
        formats.count(days),
        formats.percent(safe.share),
        `${formats.percent(safe.low)} to ${formats.percent(safe.high)}`,
        say.times(formats.decimal(factor, 2)),
      ]),
    }),
    list(
      kinds
        .filter(({ verdict }) => verdict === 'tooOptimistic')
        .map(({ kind, factor }) => say.kindFell(kind, asked, formats.decimal(factor, 2))),
    ),
    together,
  ];
}

function proposals(
  { causes, factor, dayFactor, verdict, busier, season, kinds }: Backtest,
  formats: Formats,
  level: string,
): string[] {
  const found = causes.filter((one) => one.found).map(({ cause }) => cause);
  const text = formats.decimal(factor, 2);
  return [
    verdict === 'tooOptimistic'
      ? say.factor(text, level)
      : (factor < 1 ? say.factorLess : say.factorEnough)(text, level),
    ...found.map((cause) => {
      switch (cause) {
        case 'spread':
          return say.remedy.spread(dayFactor.high.toFixed(2));
        case 'drift':
          return say.remedy.drift(formats.decimal(busier, 2));
        case 'season':
          return say.remedy.season(months[season!.month]!, formats.decimal(season!.times, 2));
        case 'weekdays':
          return kinds.length === 0 ? say.remedy.weekdays : say.remedy.weekdaysOfKinds;
        default:
          return say.remedy[cause];
      }
    }),
  ];
}
