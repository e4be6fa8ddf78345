import words from '../../assets/words/en/plan.json' with { type: 'json' };
import { say } from '../../core/text/say.ts';
import { METHODS, type Method } from '../../core/tracing/plan/problem/problem.ts';

export type PlanArguments = {
  readonly files: readonly string[];
  readonly method: Method;
  readonly cut: number | undefined;
  readonly next: string | undefined;
  readonly json: boolean;
};

/** Reads what stands after `knowngood plan`; `says` tells a person what is wrong with it. */
export function readArguments(args: readonly string[]): PlanArguments | { readonly says: string } {
  const files: string[] = [];
  let method: Method = 'rollout';
  let cut: number | undefined;
  let next: string | undefined;
  let json = false;
  const left = [...args];
  for (let given = left.shift(); given !== undefined; given = left.shift()) {
    const [name, joined] = splitOption(given);
    const value = (): string | undefined => joined ?? left.shift();
    if (name === '--json') json = true;
    else if (name === '--method') {
      const given = value();
      if (given === undefined) return { says: say(words.usage['no-value'], { option: name }) };
      const known = METHODS.find((each) => each === given);
      if (!known) return { says: say(words.usage['unknown-method'], { method: given, methods: METHODS.join(', ') }) };
      method = known;
    } else if (name === '--cut') {
      const given = value();
      if (given === undefined) return { says: say(words.usage['no-value'], { option: name }) };
      cut = given.trim() === '' ? Number.NaN : Number(given);
      if (!(cut >= 0 && cut < 1)) return { says: say(words.usage['bad-cut'], { cut: given }) };
    } else if (name === '--next') {
      next = value();
      if (next === undefined) return { says: say(words.usage['no-value'], { option: name }) };
    } else if (name.startsWith('-') && name !== '-') {
      return { says: say(words.usage['unknown-option'], { option: name }) };
    } else files.push(name);
  }
  return files.length === 0 ? { says: words.usage['no-files'] } : { files, method, cut, next, json };
}

/** `--cut=0.01` is the same as `--cut 0.01`. */
function splitOption(text: string): [string, string | undefined] {
  const at = text.startsWith('--') ? text.indexOf('=') : -1;
  return at < 0 ? [text, undefined] : [text.slice(0, at), text.slice(at + 1)];
}
