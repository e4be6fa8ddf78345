import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import type { CliCommand } from './command.ts';
import { readOptions } from './options.ts';

/** `knowngood serve`: the built service over loopback HTTP, until it is stopped. */
export const serve: CliCommand = {
  name: 'serve',
  help: cliWords.serve,
  run: async (args, io) => {
    const asked = readOptions(args, ['data', 'http']);
    if ('wrong' in asked) {
      io.err(asked.wrong);
      return 2;
    }
    const service = join(dirname(fileURLToPath(import.meta.url)), '..', '..', 'dist', 'service.mjs');
    if (!existsSync(service)) {
      io.err(cliWords.notBuilt);
      return 2;
    }
    const { data, http } = asked.options;
    const child = spawn(
      process.execPath,
      [service, '--http', http ?? '0', ...(data === undefined ? [] : ['--data', data])],
      { stdio: ['pipe', 'inherit', 'inherit'] },
    );
    const stop = () => child.kill('SIGTERM');
    process.once('SIGINT', stop);
    process.once('SIGTERM', stop);
    return new Promise((done) => child.once('exit', (code) => done(code ?? 0)));
  },
};
