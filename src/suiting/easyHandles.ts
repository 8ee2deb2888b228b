/**
 * Guests who need an easy handle, as demand: a fraction of every drink's guests asks for another vessel.
 *
 * The rush then sizes that vessel like any other ware, so that the number to buy is a result and not a
 * rule of thumb.
 */
import type { SuitDrink } from './model.js';

/** A drink of the menu as some guests have it. */
export interface DrinkVariant extends SuitDrink {
  /** The drink of the menu that this is a variant of. */
  readonly of: string;
  readonly easyHandle: boolean;
}

/**
 * Splits each drink whose vessel has a substitute into two variants: the drink as it is, and the share
 * (0..1) of its guests who have it in the easy vessel. Shares of the variants of a drink sum to the
 * drink's own. Fall-backs of the easy variant are substituted alike, for the need does not go away when a
 * shelf is empty; a takeaway cup stays last as the menu has it.
 */
export function easyHandleVariants(
  menu: readonly SuitDrink[],
  share: number,
  substitute: Readonly<Record<string, string>>,
): DrinkVariant[] {
  const taken = new Set(menu.map((drink) => drink.id));
  const easier = (setting: readonly string[]): string[] =>
    setting.map((ware) => (Object.hasOwn(substitute, ware) ? substitute[ware]! : ware));
  const same = (a: readonly string[], b: readonly string[]): boolean =>
    a.length === b.length && a.every((ware, i) => ware === b[i]);
  return menu.flatMap((drink) => {
    const setting = easier(drink.setting);
    const asItIs: DrinkVariant = { ...drink, of: drink.id, easyHandle: false };
    if (share <= 0 || same(setting, drink.setting)) return [asItIs];
    const fallBacks = drink.fallBacks
      .map(easier)
      .filter((s, i, all) => !same(s, setting) && all.findIndex((t) => same(s, t)) === i);
    let id = `${drink.id}-easy`;
    while (taken.has(id)) id += '-easy';
    taken.add(id);
    const easy: DrinkVariant = {
      id,
      of: drink.id,
      easyHandle: true,
      name: `${drink.name}, easy handle`,
      share: drink.share * share,
      setting,
      fallBacks,
    };
    if (share >= 1) return [easy];
    return [{ ...asItIs, share: drink.share - easy.share }, easy];
  });
}
