import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import type { CliCommand } from './command.ts';
import { runDemo } from './demo/runDemo.ts';
import { readOptions } from './options.ts';

/** `knowngood papers --out DIR`: the papers of the demo job, drawn. */
export const papers: CliCommand = {
  name: 'papers',
  help: cliWords.papers,
  run: async (args, io) => {
    const asked = readOptions(args, ['out']);
    if ('wrong' in asked || asked.options.out === undefined) {
      io.err('wrong' in asked ? asked.wrong : cliWords.papersOut);
      return 2;
    }
    const { papers: written } = await runDemo({ out: asked.options.out, machine: null, print: () => undefined });
    for (const path of written) io.out(path);
    return 0;
  },
};
