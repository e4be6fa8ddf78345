import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import { readText } from '../../core/readings/readText.ts';
import { fill } from '../../core/text/wordsFor.ts';
import type { CliCommand } from './command.ts';
import { emptyPlace } from './demo/emptyPlace.ts';
import { runDemo } from './demo/runDemo.ts';
import { readOptions } from './options.ts';

/** `knowngood demo`: the invented shop's job from taking-in to hand-over, or the same on a machine that FILE describes. */
export const demo: CliCommand = {
  name: 'demo',
  help: cliWords.demo,
  run: async (args, io) => {
    const asked = readOptions(args, ['out', 'machine', 'data']);
    if ('wrong' in asked || asked.rest.length > 0) {
      io.err('wrong' in asked ? asked.wrong : fill(cliWords.unexpected, { rest: asked.rest }));
      return 2;
    }
    const { out, machine, data } = asked.options;
    let text: string | null = null;
    if (machine !== undefined) {
      const read = await readMachine(machine, io.readFile);
      if ('why' in read) {
        io.err(fill(cliWords.machineNotRead, { file: machine, why: read.why }));
        return 2;
      }
      text = read.text;
    }
    const kept = data === undefined ? null : emptyPlace(data);
    if (kept && 'why' in kept) {
      io.err(fill(cliWords.demoData[kept.why], kept));
      return 2;
    }
    const { papers } = await runDemo({ out: out ?? null, machine: text, print: io.out, ...(kept && { kept }) });
    for (const path of papers) io.out(fill(cliWords.demoOut, { path }));
    if (kept) io.out(fill(cliWords.demoKept, kept));
    return 0;
  },
};

async function readMachine(
  file: string,
  readFile: (path: string) => Promise<Uint8Array>,
): Promise<{ readonly text: string } | { readonly why: string }> {
  try {
    const text = new TextDecoder().decode(await readFile(file));
    const said = readText(text);
    return said.kinds.includes('dmidecode') ? { text } : { why: said.gaps[0]?.why ?? cliWords.noDmidecode };
  } catch (error) {
    return { why: error instanceof Error ? error.message : String(error) };
  }
}
