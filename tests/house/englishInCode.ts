import {
  areaOf,
  type Finding,
  identifier,
  isCode,
  isNode,
  isTest,
  type Node,
  nodesOf,
  place,
  type Source,
} from './source.ts';

/** Two words side by side: what is read by people, and so belongs into the words of a language. */
const SENTENCE = /\p{L}{2,}[,;:]? \p{L}{2,}/u;

/** Attributes of an element that no one reads. */
const UNREAD_ATTRIBUTES = new Set([
  'className',
  'd',
  'style',
  'transform',
  'rel',
  'viewBox',
  'sizes',
  'allow',
  'sandbox',
]);

/** Files whose sentences stand in the code, each with its reason. */
export const ENGLISH_ALLOWED: Readonly<Record<string, string>> = {
  'core/readings/': 'labels that open tools print, looked for in their reports',
  'core/tracing/plan/': 'the id of a plan’s last step, and bounds of the search, which come with a refusal as facts',
  'core/tracing/live/checks/':
    'what the check of a shop’s own model finds, for who edits its files, whose fields and ids are English as well',
  'core/tracing/live/loading/': 'the same',
  'core/tracing/live/shop/editModel.ts': 'the same, for a change to it',
  'core/tracing/cases/form/readCase.ts': 'what the check of a case’s file finds, for who writes one',
  'core/commands/kernel/fields.ts': 'what a schema says of input that no screen sends',
  'core/commands/shop/settingFields.ts': 'the same',
  'core/fit/loaners.ts': 'stands for a fact that is not known, and is never shown',
  'core/labour/tasks/catalogue.ts': 'the name of a source, as the data has it',
  'electron/cli/demo/': 'notes within the invented story, as its people write them',
  'electron/cli/plan.ts': 'the id of a plan’s last step',
  'electron/cli/planText.ts': 'the same',
  'electron/launch/': 'runs before there is anything but Node, and so without words',
  'electron/page/': 'types of content, style and policy of a page',
  'electron/service/askedFor.ts': 'for who starts the service by hand',
  'electron/service/dataFolder.ts': 'a folder of the system',
  'electron/service/desk/estimating/following.ts': 'names a defect in the log of the service',
  'electron/service/lifetime.ts': 'the same',
  'electron/service/main.ts': 'for who starts the service by hand',
  'electron/service/openBacking.ts': 'names a defect in the log of the service',
  'electron/service/transport/': 'the same',
  'electron/stations/': 'headers of HTTP, and a name in the log of the service',
  'renderer/bench/next/keepFocus.ts': 'what may have the focus, as a selector',
  'renderer/kit/fields/FindField.tsx': 'a side of the screen, for the list that opens',
  'renderer/kit/shell/keepFocusNear.ts': 'what may have the focus, as a selector',
  'renderer/kit/text/textWidth.ts': 'a typeface',
  'renderer/wall/deeds/LendPart.tsx': 'the id of a choice',
};

/**
 * Sentences of English in code that people would read: they belong into `assets/words`. What a defect says of itself
 * (an error that is thrown) is for whoever mends it, and may stand where it is thrown.
 */
export function englishInCode(source: Source, allowed = ENGLISH_ALLOWED): readonly Finding[] {
  if (!['core', 'electron', 'renderer'].includes(areaOf(source.path)) || !isCode(source) || isTest(source)) return [];
  if (Object.keys(allowed).some((start) => source.path.startsWith(start))) return [];
  const parents = new Map<Node, Node | undefined>();
  const found: Finding[] = [];
  for (const { node, parent } of nodesOf(source)) {
    parents.set(node, parent);
    const text = readText(node);
    if (text === undefined || !SENTENCE.test(text) || isForMenders(node, parents)) continue;
    found.push(`${place(source, node)} says “${text.trim()}”`);
  }
  return found;
}

/** What a literal, a piece of a template or a text between tags says. */
function readText(node: Node): string | undefined {
  if (node.type === 'JSXText' || (node.type === 'Literal' && typeof node.value === 'string')) return String(node.value);
  if (node.type !== 'TemplateElement') return undefined;
  const { cooked } = node.value as { readonly cooked?: string };
  return cooked;
}

/** Inside of an error that is made, an attribute nobody reads, a type, or a pattern of another program's text. */
function isForMenders(node: Node, parents: ReadonlyMap<Node, Node | undefined>): boolean {
  for (let at: Node | undefined = node; at; at = parents.get(at)) {
    if (at.type === 'ThrowStatement' || at.type === 'TSLiteralType' || at.type === 'TaggedTemplateExpression')
      return true;
    if (at.type === 'NewExpression' && /Error$|^Halt$|^BadField$/.test(identifier(at.callee) ?? '')) return true;
    if (at.type === 'CallExpression' && isNode(at.callee) && at.callee.type === 'Super') return true;
    if (at.type === 'JSXAttribute' && isNode(at.name) && UNREAD_ATTRIBUTES.has(String(at.name.name))) return true;
  }
  return false;
}
