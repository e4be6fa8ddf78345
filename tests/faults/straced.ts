import { spawn } from 'node:child_process';

/** What strace is asked to do to a process. */
export type Injected = {
  /** As strace writes it: `write:signal=SIGKILL:when=7`. */
  readonly inject: string;
  readonly trace: string;
};

/** The calls by which a process changes or keeps what is on a disk. */
export const DISK_CALLS =
  'openat,open,creat,write,pwrite64,pwritev,ftruncate,fsync,fdatasync,rename,renameat,renameat2,link,linkat,unlink,unlinkat,mkdir,mkdirat,chmod,fchmod,fchmodat,close,fcntl';

/**
 * Runs a Node script under strace, which ends it or fails a call of it at a given place.
 * @returns How it ended; `signal` when it was killed.
 */
export function runStraced(
  script: string,
  args: readonly string[],
  injected: Injected | null,
  limitMs = 60_000,
): Promise<{ readonly code: number | null; readonly signal: string | null; readonly out: string }> {
  return new Promise((resolve, reject) => {
    const asked = injected
      ? ['-f', '-qq', '-o', '/dev/null', '-e', `trace=${injected.trace}`, '-e', `inject=${injected.inject}`]
      : [];
    const [program, before] = injected ? ['strace', [...asked, process.execPath]] : [process.execPath, []];
    const child = spawn(program, [...before, script, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
    let out = '';
    const hear = (text: Buffer) => {
      out += text.toString();
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    const limit = setTimeout(() => child.kill('SIGKILL'), limitMs);
    child.on('error', reject);
    child.on('close', (code, signal) => {
      clearTimeout(limit);
      resolve({ code, signal, out });
    });
  });
}
