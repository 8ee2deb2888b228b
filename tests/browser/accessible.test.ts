/** WCAG 2.2 AA and best practice by an automated audit, and everything by the keyboard alone. */
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { certified, launchHere, letterPath, openLetter } from './letter.js';

let browser: Browser;
beforeAll(async () => {
  browser = await launchHere();
});
afterAll(() => browser.close());

const LEVELS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Rules about colours and widths: the others see the same on every screen. */
const LOOKS: axe.RunOnly = {
  type: 'rule',
  values: ['color-contrast', 'link-in-text-block', 'target-size', 'scrollable-region-focusable'],
};

/** @returns each violation with the places it is found in, and how many rules were passed */
async function audit(
  page: Page,
  runOnly: axe.RunOnly = { type: 'tag', values: LEVELS },
): Promise<{ violations: string[]; passes: number }> {
  // Through the debugger's door: the page's own policy lets no other script in.
  await page.evaluate(axe.source);
  return page.evaluate(async (only) => {
    // Rows of a table are alike: three of each do, as some tables have hundreds, and the audit looks at every cell.
    const sheet = document.styleSheets[0]!;
    const rule = sheet.insertRule(
      'tbody tr:nth-child(n + 4) { display: none }',
      sheet.cssRules.length,
    );
    const { violations, passes } = await (globalThis as unknown as { axe: typeof axe }).axe.run(
      document,
      // Of what passes one place a rule is enough: to name them all takes most of the time.
      { runOnly: only, resultTypes: ['violations'] },
    );
    sheet.deleteRule(rule);
    return {
      passes: passes.length,
      violations: violations.map(
        ({ id, nodes }) =>
          `${id}: ${nodes
            .slice(0, 3)
            .map(({ target, failureSummary }) => `${target.join(' ')} (${failureSummary ?? ''})`)
            .join(' | ')}`,
      ),
    };
  }, runOnly);
}

const unfold = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
  });

describe('the audit', () => {
  /** Everything open and worked out. */
  async function unfoldAll(page: Page): Promise<void> {
    await page.waitForSelector('.card');
    await unfold(page);
    const questions = page.locator('details.ask[id^=ask-]');
    for (const question of await questions.all())
      await question
        .locator(':is(table, svg, h2, h3, .wrong)')
        .first()
        .waitFor({ state: 'attached' });
    await page.locator('caption', { hasText: 'So far' }).waitFor({ state: 'detached' });
    await page.waitForSelector('.walk-tell');
    await unfold(page);
  }

  async function clean(page: Page, when: string, rules?: axe.RunOnly): Promise<void> {
    const { violations, passes } = await audit(page, rules);
    expect(violations, when).toEqual([]);
    expect(passes).toBeGreaterThan(rules === undefined ? 10 : 1);
  }

  /** 320 px are a screen of 1280 at 400 % (WCAG 1.4.10). */
  const SCREENS = [
    ['light', { width: 1200, height: 900 }],
    ['dark', { width: 390, height: 844 }],
    ['light', { width: 320, height: 640 }],
  ] as const;

  async function onScreens(
    page: Page,
    screens: readonly (typeof SCREENS)[number][],
  ): Promise<void> {
    for (const [colorScheme, size] of screens) {
      const when = `${colorScheme} ${size.width}`;
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize(size);
      await page.waitForTimeout(100);
      if (size.width !== 320) await clean(page, when, colorScheme === 'dark' ? LOOKS : undefined);
      if (size.width === 390) expect(await smallestLetters(page), when).toBeGreaterThanOrEqual(10);
      expect(
        await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        ),
        when,
      ).toBeLessThanOrEqual(0);
    }
  }

  /** Height of the smallest letters in the letter's pictures as they are drawn, px; where none is open, none are small. */
  const smallestLetters = (page: Page): Promise<number> =>
    page.evaluate(() =>
      Math.min(
        ...[...document.querySelectorAll<SVGTextElement>('[data-part] section.beside svg text')]
          .filter((text) => text.checkVisibility())
          .map((text) => {
            const svg = text.ownerSVGElement!;
            const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
            return scale * Number.parseFloat(getComputedStyle(text).fontSize);
          }),
      ),
    );

  it('the demo as it opens: no violation', async () => {
    const { page, close } = await openLetter(browser, letterPath('short.html'));
    await clean(page, 'as it opens');
    await close();
  });

  // Few guests, so that every question is worked out soon; what they say is set as in any house.
  it('a house of hostile names with everything open: no violation, and nothing wider than the screen', async () => {
    const { page, close } = await openLetter(browser, letterPath('hostile.html#trainer'), {
      reducedMotion: 'reduce',
    });
    const started = performance.now();
    await unfoldAll(page);
    console.log(`all questions answered after ${Math.round(performance.now() - started)} ms`);
    await onScreens(page, SCREENS);
    await close();
    // Every question is worked out: a machine under load takes its time for them.
  }, 300_000);

  it('the blank letter: no violation, and nothing wider than the screen; and a fault where there is one', async () => {
    const { page, close } = await openLetter(browser, letterPath('blank.html'), {
      reducedMotion: 'reduce',
    });
    await onScreens(page, SCREENS);
    await page.evaluate(() => {
      document
        .querySelector('main')!
        .insertAdjacentHTML(
          'beforeend',
          '<input type="text"><p style="color:#ddd;background:#fff">pale</p>',
        );
    });
    expect((await audit(page)).violations.map((one) => one.split(':')[0])).toEqual([
      'color-contrast',
      'label',
    ]);
    await close();
  });
});

/** The control that has the keyboard, and whether its outline can be seen. */
const focused = (
  page: Page,
): Promise<{ name: string; number: string | null; outlined: boolean; inView: boolean }> =>
  page.evaluate(() => {
    const element = document.activeElement as HTMLElement;
    const { outlineStyle, outlineWidth } = getComputedStyle(element);
    const { top, bottom } = element.getBoundingClientRect();
    return {
      name: `${element.tagName.toLowerCase()} ${element.id || element.textContent?.trim().slice(0, 40)}`,
      number: element.getAttribute('data-number'),
      outlined: outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2,
      inView: bottom > 0 && top < innerHeight,
    };
  });

describe('the keyboard alone', () => {
  it.each([['short.html'], ['blank.html']])(
    '%s: the tab key reaches every control, in the order of the page, each with an outline',
    async (name) => {
      const { page, close } = await openLetter(browser, letterPath(name));
      // Questions stay shut: their answers hold no other kinds of control, and each would be worked out.
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll<HTMLDetailsElement>(
          'details:not(.ask), #walk',
        ))
          fold.open = true;
      });
      await page.waitForTimeout(300);
      const count = await page.evaluate(() => {
        const controls = [
          ...document.querySelectorAll<HTMLElement>(
            'a[href],button,input,select,textarea,summary,[tabindex="0"]',
          ),
        ].filter((one) => !one.matches(':disabled,[tabindex="-1"]') && one.checkVisibility());
        // Of radio buttons the tab key reaches the chosen one; the arrows do the rest.
        const reached = controls.filter(
          (one) => !(one instanceof HTMLInputElement && one.type === 'radio' && !one.checked),
        );
        reached.forEach((one, index) => one.setAttribute('data-number', String(index)));
        return reached.length;
      });
      const order: number[] = [];
      const pale: string[] = [];
      // Some controls have stops of their own within, such as the hours and minutes of a time: the first counts.
      for (let press = 0; press < 3 * count && order.length < count; press += 1) {
        await page.keyboard.press('Tab');
        const { name: control, number, outlined, inView } = await focused(page);
        if (number === null || Number(number) === order.at(-1)) continue;
        order.push(Number(number));
        if (!outlined || !inView) pale.push(control);
      }
      expect(pale).toEqual([]);
      expect(order).toEqual(Array.from({ length: count }, (_, index) => index));
      await close();
    },
  );

  it('opens a fold, changes a box, chooses a reader', async () => {
    const { page, close } = await openLetter(browser, letterPath('short.html'));
    const sentence = await page.locator('[data-part=lead]').innerText();
    const to = async (selector: string): Promise<void> => {
      for (let press = 0; press < 200; press += 1) {
        if (
          await page.evaluate(
            (wanted) => document.activeElement?.matches(wanted) === true,
            selector,
          )
        )
          return;
        await page.keyboard.press('Tab');
      }
      throw new Error(`the tab key never reached ${selector}`);
    };
    await to('#pieces > summary');
    await page.keyboard.press('Enter');
    await to('#pieces-medium-cup');
    const before = Number(await page.locator('#pieces-medium-cup').inputValue());
    await page.keyboard.press('ArrowDown');
    expect(Number(await page.locator('#pieces-medium-cup').inputValue())).toBe(before - 1);
    await certified(page);
    expect(await page.locator('[data-part=lead]').innerText()).not.toBe(sentence);
    expect(
      await page.evaluate(() => document.activeElement?.id),
      'the answer takes the keyboard from nobody',
    ).toBe('pieces-medium-cup');
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Space');
    expect(await page.locator('#pieces').evaluate((fold: HTMLDetailsElement) => fold.open)).toBe(
      false,
    );

    await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    await page.locator('input[name=reader]:checked').focus();
    const order = (): Promise<(string | undefined)[]> =>
      page.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>('main > section[data-part]')]
          .filter((one) => one.checkVisibility() && one.textContent !== '')
          .map((one) => one.dataset['part']),
      );
    const asOwner = await order();
    expect(asOwner.length).toBeGreaterThan(3);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    expect(
      await page.evaluate(() => document.activeElement?.parentElement?.textContent?.trim()),
    ).toBe('trainer');
    expect(await order()).not.toEqual(asOwner);
    await close();
  });
});
