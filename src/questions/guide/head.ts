import type { Head } from '../question.js';
import { sizing } from '../settings.js';

export const guide = {
  name: 'guide',
  describe: 'One page to hand out: what cafés like this one need, by seats and takeaway share',
  writes: true,
  settings: {
    seats: {
      as: 'wholes',
      from: 1,
      to: 2000,
      describe:
        'Sizes in seats, such as 20,30,50,80; else half, once, one and a half and twice the file’s',
    },
    takeaway: {
      as: 'shares',
      describe: 'Shares of guests who take away, in percent, such as 30,60; else the file’s',
    },
    ...sizing,
  },
  offers: [
    {
      id: 'guide',
      title: 'A planning guide: cafés of other sizes run like this one',
      boxes: {
        seats: 'Seats, such as 20, 30, 50, 80',
        takeaway: 'Share taken away, in %, such as 30, 60',
      },
    },
  ],
} as const satisfies Head;
