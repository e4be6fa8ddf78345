import { describe, expect, it } from 'vitest';
import { effectsThatSend, pressesOfMany } from './onePress.ts';
import { filesBelow } from './source.ts';

/** The system locks the screen, and nobody presses: clocks of hands-on minutes stop with it. */
const LOCKED_BY_ITSELF = 'renderer/whoIsHere.tsx';

const at = (text: string) => pressesOfMany({ path: 'renderer/x.ts', text });

describe('a press is one command', () => {
  it('holds in all screens', () => {
    const screens = filesBelow('renderer');
    expect(screens.flatMap((source) => pressesOfMany(source, screens))).toEqual([]);
  });

  it('is sent by a press, never by an effect', () => {
    const screens = filesBelow('renderer');
    const sent = screens.flatMap((source) => effectsThatSend(source, screens));
    expect(sent.map((finding) => finding.split(':')[0])).toEqual([LOCKED_BY_ITSELF]);
    const found = (effect: string) => effectsThatSend({ path: 'renderer/x.tsx', text: effect });
    expect(found("useEffect(() => { void execute('a', {}); }, [open]);")).not.toEqual([]);
    expect(found("const go = () => execute('a', {}); useEffect(() => { if (open) go(); });")).not.toEqual([]);
    expect(found("useLayoutEffect(() => listen(() => execute('a', {})));")).not.toEqual([]);
    expect(found("useEffect(() => look()); const go = () => execute('a', {});")).toEqual([]);
  });

  it('what a component is handed counts with what it sends itself, however far it is handed down', () => {
    const part = (path: string, text: string) => ({ path: `renderer/bench/${path}`, text });
    const bench = (given: string) =>
      part(
        'Bench.tsx',
        `import { Panel } from './Panel.tsx';
        function Bench() {
          const { execute, problem } = useExecute();
          const plug = () => execute('plugIn', {});
          return <Panel onTake={${given}} title="a" />;
        }`,
      );
    const panel = part(
      'Panel.tsx',
      "import { Keys } from './Keys.tsx'; export function Panel({ onTake: take, title }) { return <Keys onDone={take} />; }",
    );
    const keys = (go: string) =>
      part(
        'Keys.tsx',
        `export function Keys({ onDone }) { const { execute } = useExecute(); const go = async () => { ${go} }; return go; }`,
      );
    const found = (given: string, go: string) => pressesOfMany(keys(go), [bench(given), panel, keys(go)]);
    const both = "await execute('logWork', {}); onDone();";
    expect(found("() => execute('plugIn', {})", both)).not.toEqual([]);
    expect(found('plug', both)).not.toEqual([]);
    expect(found('plug', 'onDone();')).toEqual([]);
    expect(found('() => setOpen(false)', both)).toEqual([]);
  });

  it.each([
    ['one after the other', "const go = async () => { await execute('a', {}); await execute('b', {}); };"],
    ['one if the other was done', "const go = async () => (await execute('a', {})) && execute('b', {});"],
    ['in a loop', "const go = async () => { for (const one of all) await execute('a', one); };"],
    ['for each', "const go = () => all.map((one) => doing.execute('a', one));"],
    ['after the other', "const go = () => execute('a', {}).then(() => execute('b', {}));"],
    ['by its own name', "const put = () => execute('a', {}); const go = () => { put(); put(); };"],
    ['on one of two ways', "const go = () => { if (a) return put(execute('a', {}), execute('b', {})); };"],
  ])('two of them %s are found', (_how, text) => {
    expect(at(text)).not.toEqual([]);
  });

  it.each([
    [
      'another name',
      "const { execute: put } = useExecute(); const go = async () => { await put('a', {}); await put('b', {}); };",
    ],
    [
      'a name of its own',
      "const doing = useExecute(); const put = doing.execute; const go = () => put('a', put('b', {}));",
    ],
    [
      'the hook’s other name',
      "import { useExecute as useDoing } from './link/useExecute.ts'; const { execute: put } = useDoing(); const go = () => [put('a', {}), put('b', {})];",
    ],
    [
      'what is handed in',
      "function Keys({ onDo }: { readonly onDo: Execute['execute'] }) { return () => { onDo('a', {}); onDo('b', {}); }; }",
    ],
    ['a parameter', "const go = (put: Execute['execute']) => { put('a', {}); put('b', {}); };"],
    ['the service itself', 'const go = async () => { await service.execute(a); await service.execute(b); };'],
  ])('two of them are found under %s', (_name, text) => {
    expect(at(text)).not.toEqual([]);
  });

  it('what a hook of another file sends counts with what is sent here', () => {
    const hook = {
      path: 'renderer/bench/useStep.ts',
      text: `import { useExecute } from '../link/useExecute.ts';
        export function useStep() {
          const doing = useExecute();
          const log = async () => (await doing.execute('logWork', {})) !== null;
          const look = () => 1;
          return { log, look, start: () => doing.execute('startWork', {}) };
        }`,
    };
    const panel = (go: string) => ({
      path: 'renderer/bench/Panel.tsx',
      text: `import { useStep } from './useStep.ts';
        function Panel() {
          const { execute } = useExecute();
          const step = useStep();
          const { start: begin } = useStep();
          const go = async () => { ${go} };
          return go;
        }`,
    });
    const found = (go: string) => pressesOfMany(panel(go), [hook, panel(go)]);
    expect(found("await step.log(); await execute('plugIn', {});")).not.toEqual([]);
    expect(found('await begin(); await step.log();')).not.toEqual([]);
    expect(found('await step.log(); step.look();')).toEqual([]);
    expect(found('if (done) return step.log(); return begin();')).toEqual([]);
  });

  it.each([
    ['one or the other', "const go = () => (a ? execute('a', {}) : execute('b', {}));"],
    ['the other where it left', "const go = () => { if (a) return execute('a', {}); return execute('b', {}); };"],
    ['one key each', "const keys = { a: () => execute('a', {}), b: () => execute('b', {}) };"],
    ['one of many keys', "const go = () => all.map((one) => ({ press: () => execute('a', one) }));"],
  ])('one at a time is none too many: %s', (_how, text) => {
    expect(at(text)).toEqual([]);
  });
});
