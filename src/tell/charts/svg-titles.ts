/**
 * SVG text as Vega writes it, made lean and made to tell: the sentence of a mark becomes the `title` of
 * its shape, and what no eye sees goes. The picture has one role and one label, those of its root; a role
 * or a label a mark would have a screen reader read out hundreds of shapes, where the table says it better.
 */
import { UNSEEN } from './hover.js';

const TAG = /<([a-zA-Z]+)((?:\s[\w:-]+="[^"]*")*)\s*(\/?)>/g;
const ATTRIBUTE = /\s([\w:-]+)="([^"]*)"/g;

const PLACES = new Set(['d', 'transform', 'x2', 'y2']);
const NUMBER = /-?\d+(?:\.\d+)?(?:e[-+]?\d+)?/g;

/** Thousandths of a pixel; what a float's last bits say beyond them is noise, and weighs. */
const rounded = (number: string): string => {
  const text = String(Math.abs(Math.round(Number(number) * 1000) / 1000));
  // A sign is kept even of nothing: in a path it may be what parts two numbers.
  return number.startsWith('-') ? `-${text}` : text;
};

/** Shapes that Vega puts behind and before every group, without a colour of their own or not displayed: nothing is seen of them. */
const isEmpty = (attributes: string): boolean =>
  /\sclass="(?:back|fore)ground"/.test(attributes) &&
  (/\sdisplay="none"/.test(attributes) || !/\s(?:fill|stroke)="/.test(attributes));

/** @param svg one element, attribute values escaped (no `"`, `<` or `>` within them) */
export function withTitles(svg: string): string {
  return svg.replace(TAG, (tag, name: string, attributes: string, closed: string) => {
    if (name === 'svg') return tag;
    if (name === 'path' && closed !== '' && isEmpty(attributes)) return '';
    let title = '';
    const kept = attributes.replace(ATTRIBUTE, (attribute: string, key: string, value: string) => {
      if (key === 'aria-label') title = value;
      if (key === 'class') return value.includes(UNSEEN) ? ` class="${UNSEEN}"` : '';
      if (key.startsWith('aria-') || key === 'role' || (key === 'opacity' && value === '1'))
        return '';
      return PLACES.has(key) ? ` ${key}="${value.replace(NUMBER, rounded)}"` : attribute;
    });
    if (title === '' || name === 'g') return `<${name}${kept}${closed}>`;
    return `<${name}${kept}><title>${title}</title>${closed === '' ? '' : `</${name}>`}`;
  });
}
