/** The order in blocks: what to buy from whom and why so many, when again, where it goes. */
import { nextStepSentence } from '../../ordering/landed.js';
import type { OrderSheet } from '../../ordering/order-sheet.js';
import { repeatWords } from '../../ordering/order-sheet-csv.js';
import { UNQUOTED_LEAD_DAYS } from '../../ordering/sheet-line.js';
import { fold, heading, list, paragraphs, table, type Block } from '../../tell/block.js';
import { asSentence } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import { shortName } from '../../tell/section-parts.js';
import { listed } from '../../tell/words.js';
import { allowanceTexts } from './tell-allowance.js';
import { bridgeBlocks, whySoMany } from './bridge.js';
import { nowTable } from './now-table.js';
import { costNames, moneyIn } from './money.js';
import { oneSupplier } from './one-supplier.js';
import { orderCharts } from './pictures.js';
import { saucerBlocks, storageBlocks } from './places.js';
import type { OrderStudy } from './study.js';
import { say } from './words.js';

export function orderBlocks(study: OrderStudy, context: ReportContext): Block[] {
  const { sheet, storage, unquoted } = study;
  const formats = formatsFor(context);
  const warnings = [...sheet.warnings, ...(storage?.warnings ?? [])];
  const allowance = allowanceTexts(study, formats);
  return [
    heading(say.heading(shortName(sheet.title), sheet.date)),
    paragraphs([leadOf(study, formats)], 'lead'),
    paragraphs([
      allowance.lead,
      sheet.plan === null || sheet.plan.proved
        ? ''
        : sheet.plan.gap === null
          ? say.notProved
          : say.notProvedWithin(formats.percent(sheet.plan.gap, 0)),
      promiseOf(sheet, formats),
      whySoMany(sheet, unquoted, formats),
      kindsText(study, formats),
    ]),
    nowTable(study, formats),
    paragraphs(
      [unquoted ? say.notes : `${say.notes} ${landedNote(sheet)}`, allowance.method],
      'small',
    ),
    paragraphs(unquoted ? [] : consignments(sheet, formats)),
    list(
      warnings.map(({ message }) => asSentence(message)),
      say.warnings,
    ),
    ...bridgeBlocks(sheet, context),
    ...againBlocks(sheet, unquoted, formats),
    list(
      sheet.consignments.flatMap((one) =>
        one.nextSteps.map((step) => nextStepSentence(step, nameIn(sheet), moneyIn(sheet))),
      ),
      say.next,
    ),
    ...suppliers(sheet, formats),
    ...pictures(study, context),
    ...takeaway(sheet, formats),
    ...saucerBlocks(study, context),
    ...storageBlocks(study, context),
    list(
      sheet.cautions.map(({ text, defersTo }) => `${text} (${say.defers} ${defersTo}.)`),
      say.cautions,
    ),
  ];
}

/** How many days of which kind the uses are of; '' where all days are alike. */
const kindsText = ({ answer: { kinds } }: OrderStudy, { count }: Formats): string =>
  kinds === undefined
    ? ''
    : say.kinds(
        listed(kinds.map(({ name, daysAYear }) => say.kind(count(daysAYear), shortName(name)))),
      );

/** Names of ware in a sentence. */
const nameIn =
  (sheet: OrderSheet) =>
  (id: string): string =>
    shortName(sheet.lines.find(({ ware }) => ware === id)?.name ?? id);

function leadOf({ sheet, unquoted }: OrderStudy, { count }: Formats): string {
  if (unquoted)
    return say.leadUnquoted(count(sheet.lines.reduce((sum, { needed }) => sum + needed, 0)));
  const { totals } = sheet;
  const wanted = sheet.lines.filter(({ pieces }) => pieces > 0);
  const unsold = wanted.filter(({ cartons }) => cartons === null);
  if (wanted.length > 0 && unsold.length === wanted.length)
    return say.leadUnsold(count(totals.pieces));
  const included = totals.costs.filter(({ id, minor }) => id !== 'goods' && minor > 0);
  const lead = say.lead(
    count(totals.pieces),
    moneyIn(sheet)(totals.totalMinor),
    included.length === 0 ? '' : costNames(included),
  );
  return unsold.length === 0
    ? lead
    : `${lead} ${say.partlySold(listed(unsold.map(({ ware }) => nameIn(sheet)(ware))))}`;
}

function promiseOf(sheet: OrderSheet, { count, percent }: Formats): string {
  const review = count(sheet.reviewDays);
  const together = percent(sheet.chanceTogether, 0);
  const asked = percent(sheet.confidence, 0);
  return sheet.promise === 'together'
    ? say.promiseTogether(review, asked, together)
    : say.promiseEach(
        review,
        asked,
        together,
        sheet.chanceTogether >= sheet.confidence && sheet.totals.cartons > 0,
      );
}

const landedNote = ({ totals: { costs } }: OrderSheet): string =>
  say.landedNote(
    costNames(costs.filter(({ landed }) => landed)),
    costNames(costs.filter(({ landed }) => !landed)),
  );

function againBlocks(sheet: OrderSheet, unquoted: boolean, { count }: Formats): Block[] {
  const kept = say.again.flatMap((_, at) => (unquoted && at > 2 ? [] : [at]));
  const pick = (cells: readonly string[]): string[] => kept.map((at) => cells[at]!);
  return [
    table({
      caption: say.againCaption,
      columns: pick(say.again).map((title, at) => ({
        title,
        as: at === 1 || at === 2 ? 'figures' : 'words',
        ...(at > 2 ? { spare: true } : {}),
      })),
      rows: sheet.lines.map((line) =>
        pick([
          shortName(line.name),
          line.reorderPoint === null ? say.none : count(line.reorderPoint),
          line.nextOrder?.expected ?? say.none,
          line.supplierName === null ? say.none : shortName(line.supplierName),
          repeatWords(line.repeat) || say.none,
        ]),
      ),
    }),
    paragraphs(
      [
        unquoted
          ? `${say.againNote} ${say.againUnquoted(count(UNQUOTED_LEAD_DAYS))}`
          : say.againNote,
      ],
      'small',
    ),
  ];
}

function consignments(sheet: OrderSheet, { decimal }: Formats): string[] {
  const money = moneyIn(sheet);
  return sheet.consignments.map((one) =>
    say.consignment(
      shortName(one.name),
      one.cartons,
      one.massG === null ? '' : say.mass(decimal(one.massG / 1000)),
      money(one.freightMinor),
      shortName(one.freightStep),
      money(one.totalMinor),
      one.delivery,
    ),
  );
}

function suppliers(sheet: OrderSheet, { count }: Formats): Block[] {
  if (sheet.plan === null) return [];
  const money = moneyIn(sheet);
  const days = count(sheet.horizonDays);
  const { openingMinor, totalMinor } = sheet.plan.chosen;
  const several = sheet.suppliers.length > 1;
  const simpler = oneSupplier(sheet);
  const asOrdered = several ? say.asOrdered : say.overTime;
  return [
    list(
      [
        ...(several ? sheet.suppliers : []).map((one) =>
          one.alone === null
            ? say.missing(shortName(one.name), listed(one.missing.map(nameIn(sheet))))
            : say.alone(
                shortName(one.name),
                money(one.alone.openingMinor),
                money(one.alone.totalMinor),
                days,
              ),
        ),
        asOrdered(money(openingMinor), money(totalMinor), days),
        ...(simpler === null
          ? []
          : [
              say.oneSupplier(
                shortName(simpler.name),
                money(simpler.moreMinor),
                days,
                count(sheet.consignments.length),
              ),
            ]),
      ],
      several ? say.suppliers : say.overTimeCaption,
    ),
    paragraphs([say.overTimeNote], 'small'),
  ];
}

/** The pictures of the ware that costs most stand open. */
function pictures(study: OrderStudy, context: ReportContext): Block[] {
  const costliest = study.sheet.lines
    .map((line, at) => ({ line, at }))
    .toSorted(
      (a, b) =>
        (b.line.landedMinor ?? 0) - (a.line.landedMinor ?? 0) || b.line.pieces - a.line.pieces,
    )[0];
  const charts = orderCharts(study, context);
  const first = charts.filter(
    ({ id }) =>
      costliest !== undefined &&
      (id === `shelf-${costliest.at + 1}` || id === `landed-${costliest.at + 1}`),
  );
  return [
    { kind: 'picture', pictures: first },
    fold(say.others, [{ kind: 'picture', pictures: charts.filter((one) => !first.includes(one)) }]),
  ];
}

function takeaway(sheet: OrderSheet, { count, percent }: Formats): Block[] {
  const money = moneyIn(sheet);
  const lines = sheet.takeaway;
  if (lines.length === 0) return [];
  return [
    table({
      caption: say.takeaway(percent(lines[0]!.confidence, 0)),
      columns: say.takeawayHead.map((title, at) => ({
        title,
        as: at === 0 ? 'words' : 'figures',
        ...(at === 2 ? { spare: true } : {}),
      })),
      rows: lines.map((line) => [
        shortName(line.name),
        count(line.aWeek),
        count(line.asFallBackAWeek),
        count(line.forAWeek),
        `${count(line.sleevesAWeek)} × ${count(line.sleeve)}`,
        money(line.minorAWeek),
      ]),
    }),
    paragraphs([say.takeawayNote], 'small'),
  ];
}
