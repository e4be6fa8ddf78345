/**
 * Writes on standard error that something failed which no user can cause: where, what kind, and the calls that led
 * there. Never the error's message: it may quote what somebody entered, and logs must hold no personal value.
 */
export function tellDefect(where: string, error: unknown): void {
  const name = error instanceof Error ? error.name : typeof error;
  const code = error instanceof Error && 'code' in error ? ` ${String(error.code)}` : '';
  const stack = error instanceof Error ? (error.stack ?? '').replace(error.message, '') : '';
  const calls = stack.split('\n').filter((line) => /^\s+at /.test(line));
  process.stderr.write(`${[`Defect in ${where}: ${name}${code}`, ...calls].join('\n')}\n`);
}
