/**
 * A text whose lines all end alike: a table put together from two programs has several kinds of ends, and the reader
 * of tables, which goes by the first, then counts lines wrongly.
 */
export const evenLines = (text: string): string => text.replace(/\r\n?/g, '\n');
