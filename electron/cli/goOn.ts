import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import { fill } from '../../core/text/wordsFor.ts';
import { epochMs } from '../../core/time.ts';
import { fileWallet, goOnWithWhatIsHere as goOnWith } from '../../db/index.ts';
import { apartFolder, defaultDataFolder, walletOf } from '../service/dataFolder.ts';
import { cannotStart, cannotStartText } from '../words/cannotStart.ts';
import type { CliCommand } from './command.ts';
import { readOptions } from './options.ts';

/** Said in full, so that nobody gives anything up by the way. */
const YES = 'what-is-lost-is-lost';

/** `knowngood go-on`: lets a shop go on with what is here, once it was read what is given up for it. */
export const goOn: CliCommand = {
  name: 'go-on',
  help: cliWords.goOn.help,
  run: async (args, io) => {
    const asked = readOptions(args, ['data', 'wallet', 'yes']);
    if ('wrong' in asked) {
      io.err(asked.wrong);
      return 2;
    }
    const { data, wallet, yes } = asked.options;
    const folder = data ?? defaultDataFolder();
    const given = await goOnWith(
      {
        folder,
        branch: 'main',
        clock: () => epochMs(Date.now()),
        wallet: fileWallet(wallet ?? walletOf(folder)),
        apart: apartFolder(),
        log: () => undefined,
      },
      yes === YES,
    );
    if (given === null) {
      io.out(cliWords.goOn.nothing);
      return 0;
    }
    if ('refused' in given) {
      io.err(cannotStartText(given));
      return 2;
    }
    const { why, last, heads, keys, setAside } = given;
    io.out(cannotStart(why).says);
    io.out(fill(cliWords.goOn.givenUp, { last, heads, keys }));
    if (setAside) io.out(fill(cliWords.goOn.setAside, { path: setAside }));
    io.out(yes === YES ? cliWords.goOn.done : fill(cliWords.goOn.ask, { yes: YES }));
    return yes === YES ? 0 : 1;
  },
};
