import { describe, expect, test } from 'vitest';
import { readVessels } from '../../src/ordering/vessels-file.js';

const head =
  'id,name,price,brim,rim,foot,well,height,handle,mass,saucer,colour,carton,lead time,until';
const problems = (text: string): string[] => {
  const read = readVessels(text, 'EUR');
  return read.ok ? [] : read.problems.map(({ path, rule }) => `${path.slice(1).join(' ')} ${rule}`);
};

describe('a table of vessels', () => {
  test('bare numbers take the unit of their column, others keep theirs', () => {
    const read = readVessels(
      `${head}\nwhite-200,White cup,4.20,200,8.6 cm,50,,64,27,0.25 kg,white-s,white,12,10 days,2027-06-30\nwhite-s,,2,,150,,54,,,200,,,,,`,
      'EUR',
    );
    expect(read).toMatchObject({
      ok: true,
      value: [
        {
          id: 'white-200',
          row: 2,
          saucer: 'white-s',
          carton: 12,
          leadDays: 10,
          until: '2027-06-30',
          measures: { price: '4.20 EUR', brim: '200 ml', rim: '8.6 cm', mass: '0.25 kg' },
        },
        { id: 'white-s', saucer: null, carton: 1, leadDays: 7, until: 'assured' },
      ],
    });
  });

  test('a price of many takes the currency before what it is of', () => {
    const read = readVessels('id,price\na,4.50 a hundred\nb,81 EUR a carton\nc,45/1000', 'EUR');
    expect(read.ok && read.value.map(({ measures }) => measures['price'])).toEqual([
      '4.50 EUR a hundred',
      '81 EUR a carton',
      '45 EUR/1000',
    ]);
  });

  test('everything that is wrong is told at once, by row and column', () => {
    expect(problems('id;price;saucer;carton;until\na;1;nowhere;0;soon\na;;;;\n-b;2;;;')).toEqual([
      '2 until is not a day',
      '2 carton is not a whole number above 0',
      '3 id is in row 2 already',
      '3 price is missing',
      '4 id is not an id',
      '2 saucer is not in this table',
    ]);
    expect(problems('id,price,glaze\na,1,matt')).toEqual([
      '1 column 3 is not a column of a table of vessels',
    ]);
    expect(problems('id,price')).toEqual(['2 is missing: there are no vessels']);
  });
});
