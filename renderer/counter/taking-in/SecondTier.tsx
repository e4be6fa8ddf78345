import { useWords } from '../../kit/text/words.tsx';
import { ReportField } from '../fields/ReportField.tsx';
import { BeforeFields } from './BeforeRows.tsx';
import { WorkRow } from './MoneyRow.tsx';
import { OwnerKindRow } from './OwnerRow.tsx';
import { Row } from './Row.tsx';
import { beforeAnswered } from './sheet.ts';
import { useTakingIn } from './sheetContext.tsx';

/** Below the perforation: what can wait until before the first screw. */
export function SecondTier() {
  const { t } = useWords();
  const { sheet, write } = useTakingIn();
  return (
    <>
      <Row id="before" known={beforeAnswered(sheet.before)}>
        <BeforeFields before={sheet.before} onChange={(before) => write({ before })} />
      </Row>
      <OwnerKindRow />
      <Row id="report" known={sheet.report !== null}>
        <p className="k-muted k-small">{t('counter.report.hint')}</p>
        <ReportField report={sheet.report} onChange={(report) => write({ report })} />
      </Row>
      <WorkRow />
    </>
  );
}
