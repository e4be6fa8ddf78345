import { wallTime } from '../../../core/calendar.ts';
import { openDays } from '../../../core/job/promise/openDays.ts';
import { epochMs } from '../../../core/time.ts';
import { AmountField } from '../../kit/fields/AmountField.tsx';
import { MomentField } from '../../kit/fields/DateField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { YesNo } from '../../kit/keys/YesNo.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { OneOf } from '../fields/OneOf.tsx';
import { KNOWN_TASKS } from '../terms.ts';
import { Row } from './Row.tsx';
import { useTakingIn } from './sheetContext.tsx';
import { wrongOnSheet } from './wrongOnSheet.ts';

/** How much it may cost without another word, small parts within it, what it is worth, and what is said of the finding fee. */
export function MoneyRow() {
  const { t, moneyShort } = useWords();
  const { sheet, write, settings } = useTakingIn();
  const { currency, findingFee } = settings;
  const fee = moneyShort({ minor: findingFee.minor, currency });
  return (
    <Row id="limit" known={sheet.limitMinor !== null}>
      <div className="counter-fields">
        <AmountField
          label={t('counter.money.limit')}
          labelled="above"
          currency={currency}
          minor={sheet.limitMinor}
          onChange={(minor) => write({ limitMinor: minor })}
        />
        <AmountField
          label={t('counter.money.small-parts')}
          labelled="above"
          currency={currency}
          minor={sheet.smallPartsUpToMinor}
          onChange={(minor) => write({ smallPartsUpToMinor: minor })}
        />
        <AmountField
          label={t('counter.worth.asks')}
          labelled="above"
          currency={currency}
          minor={sheet.worthMinor ?? null}
          onChange={(worthMinor) => write({ worthMinor })}
        />
        <span className="k-muted k-small">
          {t(findingFee.credited ? 'counter.money.fee-credited' : 'counter.money.fee', { fee })}
        </span>
      </div>
      <YesNo asks={t('counter.money.used')} answer={sheet.used} onAnswer={(used) => write({ used })} />
      <YesNo asks={t('counter.money.lesser')} answer={sheet.lesser} onAnswer={(lesser) => write({ lesser })} />
    </Row>
  );
}

/** When it is likely ready, and the day the owner cannot do without it. */
export function PromisedRow() {
  const { t, day } = useWords();
  const { sheet, write, settings } = useTakingIn();
  const now = epochMs(Date.now());
  const days = openDays(settings, now, 8)
    .filter((one) => one.closes > now)
    .slice(0, 7);
  const wrong = wrongOnSheet(sheet, now, settings.zone);
  const chosen = days.find((one) => wallTime(one.closes, settings.zone) === sheet.promise);
  return (
    <Row id="promise" known={sheet.promise !== ''}>
      <ChoiceKeys
        label={t('counter.promise.asks')}
        mode="one"
        choices={days.map((one) => ({ id: String(one.closes), says: day(one.closes) }))}
        chosen={chosen ? [String(chosen.closes)] : []}
        onChoose={([closes]) => write({ promise: closes === undefined ? '' : wallTime(Number(closes), settings.zone) })}
      />
      <div className="counter-fields">
        <MomentField
          label={t('counter.promise.at')}
          value={sheet.promise}
          onChange={(promise) => write({ promise })}
          wrong={wrong.promise && t(`counter.wrong.${wrong.promise}`)}
        />
        <MomentField
          label={t('counter.promise.deadline')}
          value={sheet.deadline}
          onChange={(deadline) => write({ deadline })}
          wrong={wrong.deadline && t(`counter.wrong.${wrong.deadline}`)}
        />
      </div>
    </Row>
  );
}

const CHARGING = ['charged', 'free', 'diagnosis-only'] as const;

/** What it is here for: a fault to find, or known work with its price; and how it is charged. */
export function WorkRow() {
  const { t, named } = useWords();
  const { sheet, write, settings } = useTakingIn();
  const { currency } = settings;
  const tasks = sheet.tasks;
  return (
    <Row id="work" known>
      <OneOf
        asks={t('counter.work.asks')}
        quiet
        words="work"
        ids={['find', 'known'] as const}
        chosen={tasks === null ? 'find' : 'known'}
        onChoose={(id) => write({ tasks: id === 'known' ? [] : null })}
      />
      {tasks !== null && (
        <>
          <ChoiceKeys
            label={t('counter.work.tasks')}
            choices={KNOWN_TASKS.map((id) => ({ id, says: named('counter.tasks', id) }))}
            chosen={tasks.map((one) => one.id)}
            onChoose={(ids) =>
              write({ tasks: ids.map((id) => tasks.find((one) => one.id === id) ?? { id, fixedMinor: null }) })
            }
          />
          <div className="counter-fields">
            {tasks.map((task) => (
              <AmountField
                key={task.id}
                label={t('counter.work.price', { task: named('counter.tasks', task.id) })}
                labelled="above"
                currency={currency}
                minor={task.fixedMinor}
                onChange={(minor) =>
                  write({
                    tasks: tasks.map((one) => (one.id === task.id ? { ...one, fixedMinor: minor } : one)),
                  })
                }
              />
            ))}
          </div>
        </>
      )}
      <OneOf
        asks={t('counter.charging.asks')}
        words="charging"
        ids={CHARGING}
        chosen={sheet.charging}
        onChoose={(charging) => write({ charging: charging ?? 'charged' })}
      />
    </Row>
  );
}
