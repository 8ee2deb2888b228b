/** From the par to the order: the sentence, the table and the two pictures. */
import type { Bridge } from '../../ordering/bridge.js';
import { inUnits } from '../../ordering/money.js';
import type { OrderSheet } from '../../ordering/order-sheet.js';
import { paragraphs, table, type Block } from '../../tell/block.js';
import { chart, type Chart } from '../../tell/charts/chart-table.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import { bridgeChart, bridgeTable, type BridgeInput, type BridgeStep } from './charts/bridge.js';
import { listed } from '../../tell/words.js';
import { moneyIn } from './money.js';
import { say } from './words.js';

type Amount = 'par' | 'sparesUntilDelivery' | 'sparesAfter' | 'onHand' | 'fromCartons';

/** Steps of pieces: name, figure, and whether it is taken off. */
const PIECES: readonly (readonly [string, Amount, boolean?])[] = [
  [say.bridge.par, 'par'],
  [say.bridge.untilDelivery, 'sparesUntilDelivery'],
  [say.bridge.after, 'sparesAfter'],
  [say.bridge.onHand, 'onHand', true],
  [say.bridge.cartons, 'fromCartons'],
];

/** "Why so many": each step from the par to the order that adds or takes off anything. */
export function whySoMany(sheet: OrderSheet, unquoted: boolean, { count }: Formats): string {
  const { par, sparesUntilDelivery, sparesAfter, fromCartons, onHand } = sheet.bridges.ordered;
  // What nobody sells is ordered for the usual time, whatever this order lasts.
  const sold = sheet.lines.filter(({ cartons }) => cartons !== null);
  const covers = new Set(
    (sold.length === 0 ? sheet.lines : sold).map(({ coverDays }) => Math.round(coverDays)),
  );
  const days =
    covers.size === 1
      ? count([...covers][0]!)
      : say.span(count(Math.min(...covers)), count(Math.max(...covers)));
  const steps = [
    ...(sparesUntilDelivery === 0 ? [] : [say.whySteps.untilDelivery(count(sparesUntilDelivery))]),
    ...(sparesAfter === 0
      ? []
      : [(unquoted ? say.whySteps.afterUnquoted : say.whySteps.after)(count(sparesAfter), days)]),
    ...(fromCartons === 0 ? [] : [say.whySteps.cartons(count(fromCartons))]),
    ...(onHand === 0 ? [] : [say.whySteps.onHand(count(onHand))]),
  ];
  return steps.length === 0 ? '' : [say.why(count(par)), ...steps].join(' ');
}

export function bridgeBlocks(sheet: OrderSheet, context: ReportContext): Block[] {
  const { ordered, smallest, horizon } = sheet.bridges;
  if (smallest === null || horizon === null) return [];
  const { count } = formatsFor(context);
  const money = moneyIn(sheet);
  const days = count(sheet.horizonDays);
  // Ways of the same size are one.
  const same = (a: Bridge, b: Bridge): boolean =>
    a.pieces === b.pieces && a.totalMinor === b.totalMinor;
  const ways = [
    ...(same(smallest, ordered) ? [] : [{ title: say.bridgeHead.smallest, bridge: smallest }]),
    { title: say.bridgeHead.ordered, bridge: ordered },
    ...(same(horizon, ordered) ? [] : [{ title: say.bridgeHorizon(days), bridge: horizon }]),
  ];
  const all = ways.map(({ bridge }) => bridge);
  const row = (name: string, cell: (bridge: Bridge) => string): string[] => [
    name,
    ...all.map(cell),
  ];
  return [
    table({
      caption: say.bridgeCaption,
      columns: [
        { title: say.bridgeHead.step, as: 'words' },
        ...ways.map(({ title }) => ({ title, as: 'figures' as const })),
      ],
      rows: [
        ...PIECES.filter(([, of]) => all.some((bridge) => bridge[of] !== 0)).map(
          ([name, of, less]) =>
            row(name, (bridge) =>
              less === true && bridge[of] !== 0 ? `−${count(bridge[of])}` : count(bridge[of]),
            ),
        ),
        row(say.bridge.pieces, ({ pieces }) => count(pieces)),
        ...ordered.costs
          .map(({ name }, at) => ({ name, of: (bridge: Bridge) => bridge.costs[at]!.minor }))
          .filter(({ of }) => all.some((bridge) => of(bridge) !== 0))
          .map(({ name, of }) => row(name, (bridge) => money(of(bridge)))),
        row(say.bridge.total, ({ totalMinor }) => money(totalMinor)),
        row(say.bridge.each, ({ perPieceMinor }) => money(perPieceMinor)),
      ],
    }),
    paragraphs(
      [
        [
          ...(same(smallest, ordered) ? [] : [say.bridgeNotes.smallest]),
          same(horizon, ordered) ? say.bridgeNotes.horizonToo(days) : say.bridgeNotes.horizon(days),
          ...(ways.length === 1 ? [] : [say.bridgeNotes.priced]),
        ].join(' '),
      ],
      'small',
    ),
    { kind: 'picture', pictures: bridgeCharts(sheet, context) },
  ];
}

function bridgeCharts(sheet: OrderSheet, context: ReportContext): Chart[] {
  const { ordered } = sheet.bridges;
  const formats = formatsFor(context);
  const money = moneyIn(sheet);
  const look = { locale: context.locale, formats };
  const drawn = (id: string, input: BridgeInput, amount: string): Chart =>
    chart(id, bridgeChart(input, look), bridgeTable(input, say.bridgeHead.step, amount));
  const kept = (steps: readonly BridgeStep[]): BridgeStep[] =>
    steps.filter(({ value }) => value !== 0);
  return [
    drawn(
      'bridge-pieces',
      {
        title: say.bridgePieces(formats.count(ordered.par), formats.count(ordered.pieces)),
        description: say.bridgePiecesText,
        steps: kept(
          PIECES.map(([name, of, less]) => ({
            name,
            value: less === true ? -ordered[of] : ordered[of],
            label: `${less === true ? '−' : ''}${formats.count(ordered[of])}`,
          })),
        ),
        total: { name: say.bridge.pieces, label: formats.count(ordered.pieces) },
      },
      say.bridge.pieces,
    ),
    drawn(
      'bridge-money',
      {
        title: say.bridgeMoney(money(ordered.totalMinor)),
        description: say.bridgeMoneyText(
          listed(ordered.costs.map(({ name }) => name.toLowerCase())),
        ),
        steps: kept(
          ordered.costs.map(({ name, minor }) => ({
            name,
            value: inUnits(minor, sheet.currency),
            label: money(minor),
          })),
        ),
        total: { name: say.bridge.total, label: money(ordered.totalMinor) },
      },
      sheet.currency,
    ),
  ];
}
