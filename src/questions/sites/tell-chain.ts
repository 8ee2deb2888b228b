/** Spares, the ware list and the guide as blocks. */
import { heading, paragraphs, table, list, type Block } from '../../tell/block.js';
import type { Formats } from '../../tell/format.js';
import { digitsOf } from '../../tell/format.js';
import type { SitesAnswer } from './answer.js';
import type { OutlyingSite } from './site-guide.js';
import { wareName } from './tell-parts.js';
import { say } from './words.js';

export function sparesBlocks(answer: SitesAnswer, formats: Formats): Block[] {
  const { confidence, reviewDays, lines } = answer.spares;
  if (answer.sites.length < 2 || lines.every(({ all }) => all === 0)) return [];
  const chance = formats.percent(confidence, digitsOf(confidence));
  const { count } = formats;
  const total = (of: (line: (typeof lines)[number]) => number): string =>
    count(lines.reduce((sum, line) => sum + of(line), 0));
  return [
    heading(say.sparesHead, 2),
    paragraphs([say.sparesLead(count(reviewDays))]),
    table({
      caption: say.sparesCaption,
      columns: [
        { title: say.item, as: 'words' },
        { title: say.par, as: 'figures', spare: true },
        { title: say.each(chance), as: 'figures' },
        { title: say.allAtOnce(chance), as: 'figures' },
        { title: say.central(chance), as: 'figures' },
      ],
      rows: lines.map(({ ware, par, each, all, central }) => [
        wareName(answer)(ware),
        count(par),
        count(each),
        count(all),
        count(central),
      ]),
      totals: [
        say.total,
        total(({ par }) => par),
        total(({ each }) => each),
        total(({ all }) => all),
        total(({ central }) => central),
      ],
    }),
  ];
}

export function listBlocks(answer: SitesAnswer, { count }: Formats): Block[] {
  const { kinds, fewest } = answer.wareList;
  if (kinds.length === 0) return [];
  const name = wareName(answer);
  return [
    heading(say.listHead, 2),
    ...(fewest === null
      ? []
      : [
          paragraphs([
            fewest.without.length === 0
              ? say.fewestAll
              : say.fewest(
                  count(fewest.ware.length),
                  fewest.without.map(name).join(', '),
                  fewest.changed.join(', '),
                ),
          ]),
        ]),
    table({
      caption: say.listCaption,
      columns: [
        { title: say.item, as: 'words' },
        { title: say.usedAt, as: 'figures' },
        { title: say.pieces, as: 'figures' },
      ],
      rows: kinds.map(({ ware, sites, pieces }) => [name(ware), count(sites), count(pieces)]),
    }),
  ];
}

export function guideBlocks(answer: SitesAnswer, formats: Formats): Block[] {
  const { guide } = answer;
  if (guide === null) return [];
  const name = wareName(answer);
  const { count, decimal, percent } = formats;
  return [
    heading(say.guideHead, 2),
    paragraphs([say.guideLead]),
    table({
      caption: say.guideCaption(say.siteCount(guide.sites, count(guide.sites))),
      columns: [
        { title: say.item, as: 'words' },
        { title: say.fixed, as: 'figures' },
        { title: say.perGuest, as: 'figures' },
        { title: say.typical, as: 'figures' },
        { title: say.worst, as: 'figures' },
      ],
      rows: guide.rules.map(({ ware, fixed, perGuest, typicalError, worst }) => [
        ware === null ? say.allWare : name(ware),
        decimal(fixed),
        decimal(perGuest, 2),
        percent(typicalError, 0),
        `${percent(worst.error, 0)} (${worst.site})`,
      ]),
    }),
    list(
      guide.outliers.map((one) =>
        say.outlier(one.site, count(one.pieces), count(one.foretold), whyText(one, formats)),
      ),
    ),
  ];
}

function whyText({ why }: OutlyingSite, { decimal, minutes, percent }: Formats): string {
  if (why === null) return '';
  const text = (value: number): string =>
    why.what === 'stayMinutes'
      ? minutes(value)
      : why.what === 'guestsASeat'
        ? decimal(value)
        : percent(value, 0);
  return say.because(say.feature[why.what], text(why.value), text(why.middle));
}
