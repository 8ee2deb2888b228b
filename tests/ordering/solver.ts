/** The solver for the tests, loaded once. */
import highsModule from 'highs';
import type { ProgrammeSolver } from '../../src/ordering/choose-buy.js';

// The package's types describe its CommonJS build; the ES module's default export is the loader itself.
const loadHighs = highsModule as unknown as typeof highsModule.default;
const loaded = loadHighs();

export const solver = (): Promise<ProgrammeSolver> => loaded;
