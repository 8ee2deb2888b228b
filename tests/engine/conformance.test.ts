import { expect, it } from 'vitest';
import expected from './conformance.json' with { type: 'json' };
import { digests } from './conformance.js';

it('gives the bytes that every engine gives', async () => {
  expect(await digests()).toEqual(expected);
});
