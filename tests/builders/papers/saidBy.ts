import type { Block, Paper, Section, Text } from '../../../core/papers/content.ts';

const flat = (text: Text): string => (typeof text === 'string' ? text : text.map((run) => run.text).join(''));

/** Every text that a content tree prints, in reading order. */
export function saidBy(paper: Paper): string[] {
  const said =
    paper.shape === 'labels'
      ? paper.labels.flatMap((label) => [label.tag, label.mark?.says ?? '', ...label.lines.map(flat)])
      : [
          paper.title,
          ...paper.head.meta.map(flat),
          ...paper.head.shop,
          paper.supersedes ?? '',
          flat(paper.lead),
          ...paper.body.flatMap(saidInSection),
          ...(paper.signing ? saidInBlock(paper.signing.line) : []),
          ...(paper.record ? [paper.record.heading, ...paper.record.sections.flatMap(saidInSection)] : []),
          paper.foot.record,
        ];
  return said.filter((text) => text.trim() !== '');
}

const saidInSection = (section: Section): string[] => [section.label, ...section.blocks.flatMap(saidInBlock)];

function saidInBlock(block: Block): string[] {
  switch (block.block) {
    case 'paragraph':
      return [flat(block.text)];
    case 'list':
      return block.items.map(flat);
    case 'facts':
      return block.rows.flatMap(({ name, value }) => [name, flat(value)]);
    case 'table':
      return [...block.columns.map(({ head }) => head), ...block.rows.flatMap(({ cells }) => cells.map(flat))];
    case 'amounts':
      return block.rows.flatMap(({ what, amount }) => [flat(what), amount]);
    case 'ruler':
      return [
        ...block.points.map(({ label }) => label),
        ...block.spans.map(({ label }) => label),
        ...(block.source === undefined ? [] : [flat(block.source)]),
      ];
    case 'comparison': {
      const [attribute, yours, offered, , verdict] = block.columns;
      const rows = block.rows.flatMap((row) => [row.attribute, row.yours, row.offered, flat(row.verdictSays)]);
      return [attribute, yours, offered, verdict, ...rows];
    }
    case 'consents':
      return [...block.columns, ...block.lines.flatMap(({ asks, answerSays }) => [asks, flat(answerSays)])];
    case 'answers':
      return block.answers.flatMap(({ title, figure, lines }) => [title, figure, ...lines.map(flat)]);
    case 'choices':
      return block.choices.map(({ text }) => text);
    case 'signature':
      return [block.what, `${block.who}, ${block.when}`, ...(block.content ? [block.content] : [])];
    case 'signing':
      return [...block.lines];
  }
}

/** What is said to those who cannot see marks, codes, rulers and signatures. */
export function spokenBy(paper: Paper): string[] {
  if (paper.shape === 'labels')
    return paper.labels.flatMap((label) => [label.qr.says, ...(label.mark ? [label.mark.says] : [])]);
  const spoken = (block: Block): string[] => {
    if (block.block === 'ruler') return [block.says];
    if (block.block === 'signature') return block.strokes ? [block.says] : [];
    if (block.block === 'table') return block.rows.flatMap(({ mark }) => (mark ? [mark.says] : []));
    return [];
  };
  return [
    ...(paper.head.qr ? [paper.head.qr.says] : []),
    ...[...paper.body, ...(paper.record?.sections ?? [])].flatMap((section) => section.blocks.flatMap(spoken)),
    ...(paper.signing ? spoken(paper.signing.line) : []),
  ];
}
