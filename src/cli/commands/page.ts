/** cuptide page: the letter before there is a scenario, as a file for people without a terminal. */
import { existsSync } from 'node:fs';
import type { CommandModule } from 'yargs';
import { MistakeError } from '../mistakes.js';

interface Arguments {
  readonly out: string;
}

export const page: CommandModule<object, Arguments> = {
  command: 'page',
  describe:
    'Write the blank letter: one HTML file in which a scenario can be begun, changed and worked out, without a terminal or a network',
  builder: (yargs) =>
    yargs.option('out', {
      type: 'string',
      default: 'cuptide.html',
      requiresArg: true,
      describe: 'File to write',
    }) as never,
  async handler({ out }) {
    const [{ blankHtml }, { livePage, typefaces }, { tryOutput, writeAll }, { print }] =
      await Promise.all([
        import('../../letter/letter.js'),
        import('../live-page.js'),
        import('../files.js'),
        import('../print.js'),
      ]);
    if (existsSync(out) && !/\.html?$/i.test(out))
      throw new MistakeError(
        `${out}: is there already and is no letter by its name; name a file that ends in .html`,
      );
    await tryOutput(out, 'file');
    await writeAll([{ path: out, content: blankHtml(await livePage(null), await typefaces()) }]);
    print(`Written: ${out}\nOpen it in a browser.\n`);
  },
};
