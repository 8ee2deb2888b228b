/** Writes the till of the market square anew (npm run reports:market); by-kinds.yaml beside it is what `cuptide till` makes of it. */
import { writeFileSync } from 'node:fs';
import { marketTill } from '../till/market-till.js';

export function main(): Promise<void> {
  writeFileSync('scenarios/market-square/till.csv', marketTill());
  return Promise.resolve();
}
