import words from '../../assets/words/en/model.json' with { type: 'json' };
import type { CliCommand, Io } from './command.ts';
import { changeShopModel } from './model/changeShopModel.ts';
import { checkFolder, copyModel, diffFolder, showModel } from './model/lookAtModel.ts';
import type { ModelAsked } from './model/modelAsked.ts';
import { readOptions } from './options.ts';

const DEEDS: Readonly<Record<string, (asked: ModelAsked, io: Io) => Promise<number>>> = {
  show: showModel,
  copy: copyModel,
  check: checkFolder,
  diff: diffFolder,
  use: (asked, io) => changeShopModel('use', asked, io),
  back: (asked, io) => changeShopModel('back', asked, io),
  learn: (asked, io) => changeShopModel('learn', asked, io),
};

/** `knowngood model`: the door to the shop's own fault model. */
export const model: CliCommand = {
  name: 'model',
  help: words.help,
  run: async (args, io) => {
    const asked = readOptions(args, ['data', 'wallet', 'name', 'by', 'take']);
    if ('wrong' in asked) {
      io.err(asked.wrong);
      return 2;
    }
    const [deed, folder] = asked.rest;
    const does = DEEDS[deed ?? ''];
    if (!does || asked.rest.length > 2) {
      io.err(words.which);
      return 2;
    }
    return does({ folder, options: asked.options }, io);
  },
};
