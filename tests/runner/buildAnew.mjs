import { ensureBuilt } from '../../electron/launch/ensureBuilt.mjs';
import { launch } from '../../electron/launch/SetUpError.mjs';
import { say } from '../../electron/launch/setUp.mjs';

await launch(async () => {
  await ensureBuilt(say, { anew: true });
  return 0;
});
