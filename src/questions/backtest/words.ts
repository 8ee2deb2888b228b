/** What a backtest says, in words. Arguments are ready-made text. */
import type { CauseName } from './answer.js';

export const say = {
  heading: 'How this would have done on recorded days',
  lead: (share: string, days: string, level: string): string =>
    `Nothing would have run out on ${share} of ${days} recorded days, each tried many times; the promise was ${level}.`,
  /** @param worth independent days that these count as; null: as many */
  interval: (low: string, high: string, days: string, worth: string | null): string =>
    `The 95 % interval is ${low} to ${high} (exact binomial${worth === null ? '' : `; as a day is like the one before, ${days} days count as ${worth}`}).`,
  verdict: {
    held: 'The promise held: the whole interval is at or above it.',
    notKnown:
      'The promise lies inside the interval, so these days do not speak against it. They are too few to prove it.',
    tooOptimistic: 'The promise was too optimistic: the whole interval is below it.',
  },
  busier: (factor: string): string =>
    `On the days tried, ${factor} times as many parties came as on the days used first.`,
  trend: (falls: boolean, share: string, p: string): string =>
    `The number of parties ${falls ? 'falls' : 'rises'} by ${share} a week (p ${p}).`,
  causes: 'What could explain it',
  cause: {
    drift: 'Drift: the number of parties changes over the weeks',
    season: 'Season: months differ from each other',
    spread: 'Spread: the later days differ more among themselves than the earlier ones',
    weekdays: 'Weekdays: they differ from each other',
    shape: 'Shape: days differ in when parties come, or parties come in groups',
  } satisfies Record<CauseName, string>,
  found: 'found',
  notFound: 'not found',
  remedy: {
    drift: (times: string): string =>
      `Use the latest weeks only (days.between in the map), or scale arrivals by ${times}, as many times the parties as on the days used first. Look again each month.`,
    season: (month: string, times: string): string =>
      `${month} has ${times} times the parties of the mean month: name the busy months as a kind of day (kinds, between) in the map, and size with what cuptide till writes.`,
    spread: (cv: string): string => `Set arrivals.dayFactor to ${cv}, the upper end over all days.`,
    weekdays:
      'Let cuptide till name the kinds of day (week: any in the map) and size with its scenario: the stock then holds on each.',
    weekdaysOfKinds:
      'Days of the week differ within a kind too: name the odd ones as a kind of their own in the map (kinds, week).',
    shape:
      'Name kinds of day in the map (kinds), so that each is sized by itself. If large groups come, treat them as bookings.',
  },
  factor: (factor: string, level: string): string =>
    `A stock ${factor} times as large would have held ${level} on these days.`,
  factorEnough: (factor: string, level: string): string =>
    `A stock ${factor} times as large would have been enough for ${level} on these days.`,
  /** The stock was larger than these days needed. */
  factorLess: (factor: string, level: string): string =>
    `These days needed less: ${factor} times the stock would have been enough for ${level} of them. That alone is no reason to buy less, as a few weeks rarely show the busiest days.`,
  charts: {
    title: (days: string, share: string, level: string): string =>
      `Safe on ${share} of ${days} recorded days; promised: ${level}`,
    description: (draws: string, low: string, high: string): string =>
      `Each point is a recorded day, in order of date, by the share of its ${draws} runs in which nothing ran out. Dashed: the level promised. Line and band: the share of all days and its 95 % interval, ${low} to ${high}.`,
    held: (level: string): string => `safe in ${level} of runs or more`,
    fell: (level: string): string => `in fewer than ${level}`,
    sentence: (date: string, parties: string, safe: string, ware: string | null): string =>
      `${date}: ${parties} parties, safe in ${safe} of runs${ware === null ? '' : `; ${ware} ran out most`}`,
    y: 'runs in which nothing ran out',
  },
  byKind: (level: string): string =>
    `By kind of day: nothing may run out on ${level} of the days of each`,
  kind: 'Kind of day',
  daysTried: 'Days tried',
  intervalOf: '95 % interval',
  enough: 'Stock that would have been enough',
  times: (factor: string): string => `${factor} times`,
  kindFell: (kind: string, level: string, factor: string): string =>
    `On days of the kind ${kind} the promise was too optimistic; a stock ${factor} times as large would have held ${level} of them.`,
  joined: (kind: string, days: string, few: boolean): string =>
    `Days of the kind ${kind} (${days} of those used) count as other days: ${few ? 'they are too few to size for apart' : 'they do not differ by more than chance, or were too few early on'}.`,
  proposal: 'What to do',
  days: 'The recorded days, in order',
  day: 'Day',
  parties: 'Parties',
  fitted: 'Expected',
  safe: 'Safe',
  ranOut: 'Ran out most',
  at: 'From about',
  origins: 'The stock of each period, from the days before it',
  from: 'Worked out from',
  fittedDays: 'Days',
  stock: 'Stock',
  how: (draws: string, days: string): string =>
    `Parties, drinks and items of each day are those of the till. It does not say when within its slot a party came, who had which drink, who stayed in, how long, or how habits varied: these were drawn ${draws} times a day. Each stock was chosen on ${days} simulated days, fitted to recorded days before those it was tried on.`,
  limits:
    'Guests who saw a full room and left are on no ticket, and a till does not say who stayed in: that share is as in the scenario.',
} as const;
