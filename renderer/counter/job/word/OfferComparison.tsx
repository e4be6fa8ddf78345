import fit from '../../../../assets/words/en/fit.json';
import { wordRow } from '../../../../core/approval/compareWords.ts';
import type { JobSheet } from '../../../../core/contract/screens.ts';
import { NumberField } from '../../../kit/fields/NumberField.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { usePreview } from '../../../link/usePreview.ts';
import { askedWithOffer, type OfferSheet } from './askSheet.ts';

const ORDER = ['worse', 'cannot-be-compared', 'equal', 'better'];

/** Both parts attribute by attribute, worse first, as the disclosure will print it; and how much the owner uses of what gets less. */
export function OfferComparison({
  sheet,
  offer,
  onUses,
}: {
  readonly sheet: JobSheet;
  readonly offer: OfferSheet;
  readonly onUses: (uses: Readonly<Record<string, number>>) => void;
}) {
  const { t, locale } = useWords();
  const { uses } = offer;
  const { shown, problem } = usePreview('ask', askedWithOffer(sheet.job.id, offer));
  const compared = shown?.comparison;
  if (problem) return <Problem slim {...problem} />;
  if (!compared) return null;
  const rows = compared.rows.toSorted((a, b) => ORDER.indexOf(a.verdict) - ORDER.indexOf(b.verdict));
  return (
    <>
      <p role="status">
        <b>
          {t('counter.offer.counts', {
            worse: compared.counts.worse,
            equal: compared.counts.equal,
            better: compared.counts.better,
            open: compared.counts['cannot-be-compared'],
          })}
        </b>
      </p>
      <table className="counter-table">
        <caption className="k-heard">{t('counter.offer.comparison')}</caption>
        <thead>
          <tr>
            {(['attribute', 'theirs', 'ours', 'verdict', 'uses'] as const).map((id) => (
              <th key={id} scope="col">
                {t(`counter.offer.columns.${id}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const worded = wordRow(row, fit, locale);
            const less = row.members.find((member) => member.verdict === 'worse')?.attribute;
            return (
              <tr key={row.attribute}>
                <th scope="row">{worded.attribute}</th>
                <td>{worded.yours ?? t('counter.offer.not-known')}</td>
                <td>{worded.offered ?? t('counter.offer.not-known')}</td>
                <td>
                  <b>{t(`counter.offer.verdicts.${row.verdict}`)}</b>
                  {worded.note === undefined ? '' : `, ${worded.note}`}
                </td>
                <td>
                  {less !== undefined && (
                    <NumberField
                      label={t('counter.offer.uses-of', { attribute: worded.attribute })}
                      labelled="heard"
                      least={0}
                      chars={3}
                      value={uses[less] ?? null}
                      onChange={(count) => onUses(withUse(uses, less, count))}
                    />
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </>
  );
}

function withUse(
  uses: Readonly<Record<string, number>>,
  attribute: string,
  count: number | null,
): Readonly<Record<string, number>> {
  const { [attribute]: _, ...others } = uses;
  return count === null ? others : { ...others, [attribute]: count };
}
