import { join } from 'node:path';
import words from '../../../assets/words/en/cli.json' with { type: 'json' };
import modelWords from '../../../assets/words/en/model.json' with { type: 'json' };
import { fill } from '../../../core/text/wordsFor.ts';
import { lineIn } from '../../../core/tracing/cases/form/lineIn.ts';
import { loadFaultModel } from '../../../core/tracing/live/loading/loadFaultModel.ts';
import { standardModel } from '../../../core/tracing/live/loading/standardModel.ts';
import { withDeeds } from '../../../core/tracing/live/shop/ownDeeds.ts';
import type { FaultModel } from '../../../core/tracing/live/types.ts';
import type { Io } from '../command.ts';
import { readModel } from '../model/modelFolder.ts';

/** The model as delivered, or that of a folder; `says` tells a person which file, field and line does not hold together. */
export async function modelFrom(
  folder: string | undefined,
  io: Io,
): Promise<{ readonly model: FaultModel } | { readonly says: string }> {
  if (folder === undefined) return { model: standardModel() };
  const files = await readModel(folder, io);
  if ('wrong' in files)
    return { says: fill(modelWords['not-read'], { wrong: String(files.wrong), why: String(files.why) }) };
  const loaded = loadFaultModel(withDeeds(files));
  if (!('refused' in loaded)) return { model: loaded };
  const { file, field, because } = loaded;
  return {
    says: fill(words.cases.wrong.field, {
      file,
      field,
      because,
      line: await lineOf(folder, file, field, io),
    }),
  };
}

/** "steps.3.handsOn" and "steps[3] watch-start.needs" both lead to a place in the file. */
async function lineOf(folder: string, file: string, field: string, io: Io): Promise<number> {
  try {
    const text = new TextDecoder().decode(await io.readFile(join(folder, file)));
    return lineIn(
      text,
      field
        .replace(/\] [\w-]+/, ']')
        .split(/[.[\]]+/)
        .filter(Boolean),
    );
  } catch {
    return 1;
  }
}
