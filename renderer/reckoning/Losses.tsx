import type { ReckoningSheet } from '../../core/contract/reckoningSheet.ts';
import { useWords } from '../kit/text/words.tsx';

/** What incidents cost the shop, year by year, by whether their cause is known. */
export function Losses({ sheet }: { readonly sheet: ReckoningSheet }) {
  const { t, number, money } = useWords();
  const { losses, currency } = sheet;
  return (
    <section className="reckoning-part" aria-labelledby="reckoning-losses">
      <h2 id="reckoning-losses">{t('reckoning.losses')}</h2>
      {losses.length === 0 && <p className="k-muted">{t('reckoning.losses-none')}</p>}
      {losses.length > 0 && currency && (
        <table className="reckoning-table">
          <thead>
            <tr>
              {(['year', 'cause', 'incidents', 'amount'] as const).map((head) => (
                <th scope="col" key={head}>
                  {t(`reckoning.${head}`)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {losses.map((loss) => (
              <tr key={`${loss.year} ${loss.cause}`}>
                <th scope="row">{String(loss.year)}</th>
                <td>{t(`reckoning.causes.${loss.cause}`)}</td>
                <td>{number(loss.incidents)}</td>
                <td>{money({ minor: loss.minor, currency })}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
