import { resolve } from 'node:path';

/**
 * The arguments meant for us on Electron's command line, which carries Chromium's switches and the app's folder too.
 * @param argv As the process got it: the program, then everything else in any order.
 * @param appFolder The folder given to an unpackaged Electron.
 */
export function ownArguments(argv: readonly string[], appFolder: string): string[] {
  const own: string[] = [];
  const rest = argv.slice(1);
  for (let at = 0; at < rest.length; at++) {
    const argument = rest[at] ?? '';
    if (argument === '--data') own.push(argument, ...rest.slice(++at, at + 1));
    else if (argument.startsWith('--data=')) own.push(argument);
    else if (!argument.startsWith('-') && resolve(argument) !== resolve(appFolder)) own.push(argument);
  }
  return own;
}
