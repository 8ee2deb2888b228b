/** The storage slice: the machine top and the reserve. */
import * as z from 'zod';
import { group, named } from '../quantities/group.js';
import { count, countOrUnlimited } from '../quantities/numbers.js';
import { duration, length, mass } from '../quantities/units.js';

const piecesEach = named(count('pieces'), 'write the pieces of each ware, such as { cup: 20 }');

export const storageSchema = group(
  {
    /** The machine top; nothing said of it is as is usual, so that a reserve shelf can be named alone. */
    top: group(
      {
        width: length.optional(),
        depth: length.optional(),
        /** Pieces on each other; a manual may forbid even this. */
        high: count('pieces in a stack', 1).optional(),
        massLimit: mass.optional(),
        gap: length.optional(),
      },
      'write { width: 700 mm, depth: 380 mm }',
    ).default({}),
    reserve: group(
      {
        width: length,
        depth: length,
        shelves: count('shelves', 1),
        high: count('pieces in a stack', 1).optional(),
      },
      'write { width: 900 mm, depth: 400 mm, shelves: 2 }',
    ).optional(),
    /** Pieces kept on top where they are not to be worked out. */
    onTop: piecesEach.optional(),
    /** Pieces left on top at which more are fetched, where it is not to be worked out. */
    trigger: piecesEach.optional(),
    trip: duration.optional(),
    tripPieces: count('pieces per trip', 1).optional(),
    /** Who fetches: the maker, or so many hands of their own. */
    fetchedBy: z
      .union([z.literal('maker'), countOrUnlimited('hands', 1)], {
        error: 'does not say who fetches; write maker, or a number of hands',
      })
      .optional(),
  },
  'write { top: { width: 700 mm, depth: 380 mm } }',
);

export type StorageSlice = z.output<typeof storageSchema>;
