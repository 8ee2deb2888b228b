/**
 * A planning guide fitted from the sites: pieces as a fixed number and so many for each guest who sits down in the busiest
 * hour (least squares), and how well that foretells a site that it was not fitted from (each left out in turn, exactly,
 * by the leverage of its row). Sites far from what the others foretell stick out.
 */
import type { SiteAnswer } from './site-answer.js';

export interface GuideRule {
  /** null: all ware together. */
  readonly ware: string | null;
  readonly fixed: number;
  readonly perGuest: number;
  /** Median of what the rule is off by for a site left out, as a share of its pieces. */
  readonly typicalError: number;
  /** Largest of these, and whose. */
  readonly worst: { readonly site: string; readonly error: number };
}

export interface OutlyingSite {
  readonly site: string;
  readonly pieces: number;
  /** As the other sites foretell. */
  readonly foretold: number;
  /** In standard errors of a forecast. */
  readonly score: number;
  /** What of the site differs most from the middle of all sites; null: nothing that is known. */
  readonly why: { readonly what: Feature; readonly value: number; readonly middle: number } | null;
}

export type Feature = 'stayMinutes' | 'takeaway' | 'guestsASeat' | 'machinesBusy' | 'clearersBusy';

export interface SiteGuide {
  readonly sites: number;
  readonly rules: readonly GuideRule[];
  readonly outliers: readonly OutlyingSite[];
}

const FEWEST_SITES = 6;
/** Beyond so many standard errors a site sticks out. */
const FAR = 3;

/** Guests who sit down in the busiest hour. */
const sitting = ({ guestsAnHour, takeaway }: SiteAnswer): number => guestsAnHour * (1 - takeaway);
const piecesOf = ({ pieces }: SiteAnswer, ware: string | null): number =>
  ware === null ? Object.values(pieces).reduce((sum, one) => sum + one, 0) : (pieces[ware] ?? 0);

export function siteGuideOf(
  sites: readonly SiteAnswer[],
  ware: readonly string[],
): SiteGuide | null {
  const x = sites.map(sitting);
  if (sites.length < FEWEST_SITES || new Set(x).size < 3) return null;
  const all = [null, ...ware].map((one) => {
    const y = sites.map((site) => piecesOf(site, one));
    return { ware: one, y, fit: lineThrough(x, y) };
  });
  return {
    sites: sites.length,
    rules: all.map(({ ware: id, y, fit }): GuideRule => {
      const errors = fit.leftOut.map((foretold, at) =>
        y[at] === 0 ? 0 : Math.abs(foretold - y[at]!) / y[at]!,
      );
      const most = errors.indexOf(Math.max(...errors));
      return {
        ware: id,
        fixed: fit.fixed,
        perGuest: fit.slope,
        typicalError: median(errors),
        worst: { site: sites[most]!.id, error: errors[most]! },
      };
    }),
    outliers: all[0]!.fit.scores
      .map((score, at): OutlyingSite => ({
        site: sites[at]!.id,
        pieces: all[0]!.y[at]!,
        foretold: all[0]!.fit.leftOut[at]!,
        score,
        why: reasonOf(sites, at),
      }))
      .filter(({ score }) => Math.abs(score) > FAR)
      .toSorted((a, b) => Math.abs(b.score) - Math.abs(a.score)),
  };
}

interface Line {
  readonly fixed: number;
  readonly slope: number;
  /** What the line through all others foretells for each point. */
  readonly leftOut: readonly number[];
  /** Each point's distance from that, in its standard errors (externally studentised residual). */
  readonly scores: readonly number[];
}

/** Least squares; leaving a point out moves its residual from e to e / (1 − h), h its leverage (Cook & Weisberg 1982, from memory). */
export function lineThrough(x: readonly number[], y: readonly number[]): Line {
  const n = x.length;
  const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / n;
  const [mx, my] = [mean(x), mean(y)];
  const sxx = x.reduce((sum, one) => sum + (one - mx) * (one - mx), 0);
  const slope = x.reduce((sum, one, at) => sum + (one - mx) * (y[at]! - my), 0) / sxx;
  const fixed = my - slope * mx;
  const residuals = y.map((one, at) => one - fixed - slope * x[at]!);
  const squares = residuals.reduce((sum, one) => sum + one * one, 0);
  const leverage = x.map((one) => 1 / n + ((one - mx) * (one - mx)) / sxx);
  return {
    fixed,
    slope,
    leftOut: residuals.map((one, at) => y[at]! - one / (1 - leverage[at]!)),
    scores: residuals.map((one, at) => {
      const free = 1 - leverage[at]!;
      const variance = Math.max(0, squares - (one * one) / free) / (n - 3);
      // Where all others lie on one line, any distance is infinitely far.
      return Math.abs(one) < 1e-9 ? 0 : one / Math.sqrt(variance * free);
    }),
  };
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

const FEATURES: Readonly<Record<Feature, (site: SiteAnswer) => number | null>> = {
  stayMinutes: ({ stayMinutes }) => stayMinutes,
  takeaway: ({ takeaway }) => takeaway,
  guestsASeat: ({ guestsAnHour, seats }) => (seats === null ? null : guestsAnHour / seats),
  machinesBusy: ({ busy }) => busy.machines,
  clearersBusy: ({ busy }) => busy.clearers,
};

/** The feature in which a site is farthest from the middle, in medians of such distances. */
function reasonOf(sites: readonly SiteAnswer[], at: number): OutlyingSite['why'] {
  let [found, far]: [OutlyingSite['why'], number] = [null, 2];
  for (const what of Object.keys(FEATURES) as Feature[]) {
    const values = sites.flatMap((site) => FEATURES[what](site) ?? []);
    const value = FEATURES[what](sites[at]!);
    if (value === null || values.length === 0) continue;
    const middle = median(values);
    const spread = median(values.map((one) => Math.abs(one - middle)));
    const distance =
      Math.abs(value - middle) < 1e-9 ? 0 : Math.abs(value - middle) / Math.max(spread, 1e-9);
    if (distance > far) [found, far] = [{ what, value, middle }, distance];
  }
  return found;
}
