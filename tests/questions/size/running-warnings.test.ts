import { describe, expect, it } from 'vitest';
import type { Answer } from '../../../src/questions/size/answer.js';
import { sizedHouse } from './houses.js';

const bar = '1-commuter-bar';
const codes = [
  'constant-habit',
  'easy-handle-guests',
  'dishwasher-mostly-empty',
  'seats-bind',
  'nothing-comes-back',
];
const warnedOf = (answer: Answer): string[] =>
  answer.warnings.map(({ code }) => code).filter((code) => codes.includes(code));
const messageOf = (answer: Answer, code: string): string =>
  answer.warnings.find((one) => one.code === code)!.message;

/** A rack for each kind of ware, as no small house with one machine would have it. */
const apart = {
  'ware.saucer.family': 'saucers',
  'ware.tumbler.family': 'glasses',
  'ware.teaspoon.family': 'cutlery',
};

describe('what is said of how a house runs', () => {
  it('nothing of a bar that runs as bars do, with seats enough', async () => {
    expect(warnedOf(await sizedHouse(bar, { 'seats.count': 40 }))).toEqual([]);
  });

  it('exact rounds and exact waits, and nothing once they vary', async () => {
    const exact = {
      'seats.count': 40,
      'clearing.every': '10 min',
      'washing.partLoadWait': '8 min',
    };
    const answer = await sizedHouse(bar, exact);
    expect(warnedOf(answer)).toEqual(['constant-habit', 'constant-habit']);
    expect(messageOf(answer, 'constant-habit')).toContain('Write "about 10 min"');
  });

  it('racks that go nearly empty, with the habits that mend it; each of them does', async () => {
    const answer = await sizedHouse(bar, apart);
    expect(warnedOf(answer)).toContain('dishwasher-mostly-empty');
    const message = messageOf(answer, 'dishwasher-mostly-empty');
    expect(answer.loads.fill).toBeLessThan(0.35);
    expect(message).toContain(`${Math.round(100 * answer.loads.fill)} % full`);
    for (const habit of ['partLoadWait', 'partLoadFrom', 'one rack'])
      expect(message).toContain(habit);
    for (const mended of [
      { 'washing.partLoadWait': 'about 40 min' },
      { 'washing.partLoadFrom': '60 %' },
    ])
      expect((await sizedHouse(bar, { ...apart, ...mended })).loads.fill).toBeGreaterThan(
        answer.loads.fill,
      );
    expect(warnedOf(await sizedHouse(bar, {}))).not.toContain('dishwasher-mostly-empty');
  });

  it('seats that bind: with more of them the house needs more', async () => {
    const few = await sizedHouse(bar, { 'seats.count': 14 });
    expect(warnedOf(few)).toContain('seats-bind');
    expect(messageOf(few, 'seats-bind')).toContain(
      `${few.guests.takeawayInstead.toFixed(few.guests.takeawayInstead < 10 ? 1 : 0)} guests a day took their drinks away`,
    );
    const more = await sizedHouse(bar, { 'seats.count': 60 });
    expect(warnedOf(more)).not.toContain('seats-bind');
    expect(more.cost).toBeGreaterThan(few.cost);
  });

  it('ware that cannot come back before closing: all of it is bought once a use', async () => {
    const slow = await sizedHouse(bar, { 'washing.machines[0].warmUp': '178 min' });
    expect(warnedOf(slow)).toContain('nothing-comes-back');
    expect(messageOf(slow, 'nothing-comes-back')).toMatch(
      /^nothing can come back .* open for 180 min/,
    );
    const tumbler = await sizedHouse(bar, { 'ware.tumbler.drying': '4 h' });
    expect(messageOf(tumbler, 'nothing-comes-back')).toMatch(/^tumbler cannot come back/);
    const broken = await sizedHouse(bar, {
      'washing.machines[0].down': [{ from: '07:00', for: '3 h' }],
    });
    expect(messageOf(broken, 'nothing-comes-back')).toMatch(/: no dishwasher works while/);
    expect(
      warnedOf(await sizedHouse(bar, { 'washing.machines[0].warmUp': '20 min' })),
    ).not.toContain('nothing-comes-back');
  });

  it('guests who ask for an easy handle', async () => {
    const answer = await sizedHouse(bar, {
      'suit.guests': { easyHandle: '10 %', instead: { 'medium-cup': 'large-cup' } },
    });
    expect(warnedOf(answer)).toContain('easy-handle-guests');
    expect(messageOf(answer, 'easy-handle-guests')).toContain('large-cup instead of medium-cup');
    const without = await sizedHouse(bar, {
      'suit.guests': { easyHandle: '0 %', instead: { 'medium-cup': 'large-cup' } },
    });
    expect(warnedOf(without)).not.toContain('easy-handle-guests');
  });

  it('what would seat more guests: not faster tables, where no party fits the house', async () => {
    const few = { days: 20 };
    const seated = async (sizes: object): Promise<string> =>
      messageOf(
        await sizedHouse(bar, { 'seats.count': 2, 'guests.partySize': sizes }, few),
        'guests-turned-away',
      );
    expect(await seated({ 1: '100 %' })).toContain('with more seats or faster tables');
    expect(await seated({ 1: '50 %', 6: '50 %' })).toContain('help no party that is larger');
    expect(await seated({ 6: '100 %' })).toContain('do not help, as every party is larger');
  });
});
