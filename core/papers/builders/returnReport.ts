import { amounts, items, joined, says, strongly, table } from '../blocks.ts';
import type { Block, Section, Sheet, Text } from '../content.ts';
import { type Format, formatFor, groupTag } from '../format.ts';
import { readingRuler } from '../ruler.ts';
import type { Setting } from '../setting.ts';
import { sheet, signing } from '../sheet.ts';
import type { ReturnReportFacts } from './returnReportFacts.ts';
import { stepLog } from './stepLog.ts';

/** What was found and done, for a lay person first; the parts and what was measured after it; the log at the end. */
export function returnReport(facts: ReturnReportFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds['return-report'];
  return sheet('return-report', facts, setting, format, {
    lead: lead(facts, setting, format),
    body: [
      { label: words.told, blocks: says(format.say(setting.words.common.quoted, { text: facts.told })) },
      { label: words.seen, blocks: says(...facts.seen) },
      { label: words.incidents, blocks: items(facts.incidents) },
      howWeKnow(facts, setting),
      { label: words.parts, blocks: parts(facts, setting, format) },
      { label: words.cost, blocks: cost(facts, setting, format) },
      { label: words.next, blocks: items(facts.atFirstStart) },
      { label: words.byTheWay, blocks: items(facts.byTheWay) },
      { label: words.differences, blocks: items(facts.differences) },
      { label: words.advice, blocks: items(facts.advice) },
      { label: words.warranty, blocks: items(facts.warranty) },
    ],
    signing: {
      on: 'last-page',
      line: signing(facts.collected, words.signed, setting, format, [
        setting.words.common.collectedLine,
        setting.words.common.dateLine,
      ]),
    },
    record: {
      heading: words.record,
      sections: [
        { label: words.proofs, blocks: proofs(facts, setting) },
        { label: words.readings, blocks: readings(facts, setting, format) },
        {
          label: words.excluded,
          blocks: items(facts.excluded?.map(({ what, why }) => strongly(what, `: ${why}`))),
        },
        { label: words.notExcluded, blocks: items(facts.notExcluded) },
        { label: words.log, wide: true, blocks: stepLog(facts.log, setting, format) },
      ],
    },
  });
}

function lead(
  { outcome, because, verdict, fitted, allInPlace, incidents = [] }: ReturnReportFacts,
  setting: Setting,
  format: Format,
): string {
  const words = setting.words.kinds['return-report'];
  return joined(
    words.outcome[outcome],
    because,
    verdict.is === 'confirmed' && format.say(words.leadConfirmed, { part: verdict.part }),
    verdict.is === 'named' && format.say(words.leadNamed, { part: verdict.part }),
    fitted && format.say(words.leadFitted, { what: fitted.what, how: fitted.agreedHow }),
    incidents.length > 0 ? words.leadIncident : rest(allInPlace, fitted !== undefined, setting),
  );
}

/** What else there is to say of what is in it; after a part was put in, it is the rest. */
function rest(allInPlace: boolean, afterAPart: boolean, setting: Setting): string {
  const words = setting.words.kinds['return-report'];
  if (afterAPart) return allInPlace ? words.leadRest : words.leadRestMoved;
  return allInPlace ? words.leadAll : words.leadAllMoved;
}

function howWeKnow({ verdict }: ReturnReportFacts, setting: Setting): Section {
  const words = setting.words.kinds['return-report'];
  switch (verdict.is) {
    case 'confirmed':
      return {
        label: words.know,
        blocks: says(strongly(words.how[verdict.how], ` ${words.howText[verdict.how]}`), ...verdict.detail),
      };
    case 'named':
      return { label: words.knowNamed, blocks: says(words.namedText, ...verdict.detail) };
    case 'not-known':
      return { label: words.knowNot, blocks: says(...verdict.detail) };
  }
}

function parts({ parts: rows }: ReturnReportFacts, setting: Setting, format: Format): Block[] {
  const words = setting.words.kinds['return-report'];
  return [
    ...table(
      words.summaryParts,
      [
        { head: words.part, share: 40 },
        { head: words.whose, share: 19 },
        { head: words.came, share: 17 },
        { head: words.goes, share: 26 },
      ],
      rows.map(({ what, tag, mark, whose, came, goes }) => ({
        mark: { ...mark, says: whose },
        cells: [
          tag ? ([{ text: `${what}, ` }, { text: groupTag(tag), tag: true }] satisfies Text) : what,
          whose,
          came,
          goes,
        ],
      })),
      true,
    ),
    { block: 'paragraph', size: 'note', text: format.say(words.marks) },
  ];
}

function proofs({ proofs: rows }: ReturnReportFacts, setting: Setting): Block[] {
  const words = setting.words.kinds['return-report'];
  if (!rows?.length) return [];
  return [
    {
      block: 'table',
      summary: words.summaryProofs,
      small: true,
      columns: [
        { head: words.proof, share: 30 },
        { head: words.result, share: 36 },
        { head: words.limit, share: 34 },
      ],
      rows: rows.map(({ what, result, limit }) => ({ cells: [what, result, limit ?? ''] })),
    },
  ];
}

function readings({ readings: list }: ReturnReportFacts, setting: Setting, format: Format): Block[] {
  const words = setting.words.kinds['return-report'];
  return (list ?? []).flatMap((reading): Block[] => {
    const { what, value, unit, atLeast, atMost } = reading;
    const range =
      atLeast === undefined || atMost === undefined
        ? format.number(atLeast ?? atMost ?? 0)
        : format.say(words.between, { from: format.number(atLeast), to: format.number(atMost) });
    const template =
      atLeast === undefined ? words.allowedAtMost : atMost === undefined ? words.allowedAtLeast : words.allowed;
    const allowed = format.say(template, { range, unit });
    const read = format.say(words.reading, { value: format.number(value) });
    const spoken = format.say(words.readingSays, { what, allowed, reading: read, unit });
    return [...says(strongly(what)), readingRuler(reading, format, { allowed, yours: read, says: spoken })];
  });
}

function cost({ cost: of }: ReturnReportFacts, setting: Setting, format: Format): Block[] {
  const words = setting.words.kinds['return-report'];
  if (!of) return [];
  const total = setting.words.common.total;
  return amounts(words.summaryCost, [
    ...of.lines.map(({ what, amount }) => ({ what, amount: format.money(amount) })),
    {
      what:
        of.toldFrom && of.toldTo
          ? format.say(words.costTold, { total, from: format.money(of.toldFrom), to: format.money(of.toldTo) })
          : total,
      amount: format.money(of.total),
      total: true,
    },
  ]);
}
