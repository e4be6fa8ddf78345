import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useDeferredValue, useMemo, useState } from 'react';
import type { ShopSettings } from '../../../core/job/shop.ts';
import { epochMs } from '../../../core/time.ts';
import { Frame } from '../../Frame.tsx';
import { useDraft } from '../../kit/fields/draft.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { Pane } from '../../kit/shell/Pane.tsx';
import { Sheet, SheetTear } from '../../kit/shell/Sheet.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useNow } from '../../kit/useNow.ts';
import { drafts } from '../../link/drafts.ts';
import { ask } from '../../link/service.ts';
import { useWhoIsHere } from '../../whoIsHere.tsx';
import { AskedPane } from '../enquiries/AskedPane.tsx';
import { CameAlongRow } from './CameAlongRow.tsx';
import { ChangedRow, OftenRow } from './ChangedRow.tsx';
import { ConsentRow, OwnSignatureRow, SignatureRow, signedAlone } from './ConsentRow.tsx';
import { EstimateFoot } from './EstimateFoot.tsx';
import { LivePaper } from './LivePaper.tsx';
import { livePapers } from './livePapers.ts';
import { MachineRow } from './MachineRow.tsx';
import { MoneyRow, PromiseRow } from './MoneyRow.tsx';
import { OwnerRow } from './OwnerRow.tsx';
import { PhotographsRow } from './PhotographsRow.tsx';
import { SecondTier } from './SecondTier.tsx';
import { freshSheet, stillOpen, type TakingInSheet } from './sheet.ts';
import { TakingInProvider, useTakingIn } from './sheetContext.tsx';
import { ToldRow } from './ToldRow.tsx';
import { TurnedToOwner } from './TurnedToOwner.tsx';
import { useTakeIn } from './useTakeIn.ts';

/** Taking in: one sheet, top to bottom, beside the paper it becomes. What was typed is kept until it is written for good. */
export function TakingIn({ settings }: { readonly settings: ShopSettings }) {
  const [start] = useState(freshSheet);
  const draft = useDraft<TakingInSheet>('taking-in', start, drafts);
  return (
    <TakingInProvider sheet={{ ...start, ...draft.value }} settings={settings} onChange={draft.set}>
      <Room
        keptAt={draft.keptAt}
        onDone={draft.done}
        onAnew={() => {
          draft.done();
          draft.set(freshSheet());
        }}
      />
    </TakingInProvider>
  );
}

const HALF_A_MINUTE = 30_000;

function Room({
  keptAt,
  onDone,
  onAnew,
}: {
  readonly keptAt: number | null;
  readonly onDone: () => void;
  readonly onAnew: () => void;
}) {
  const { t, clock } = useWords();
  const { sheet, settings, marks, row, write } = useTakingIn();
  const { staff } = useWhoIsHere();
  const [turned, setTurned] = useState(false);
  const [asked, setAsked] = useState(false);
  const at = useNow(HALF_A_MINUTE);
  const estimable = sheet.tasks === null ? sheet.symptoms.length > 0 : sheet.tasks.length > 0;
  const estimate = useQuery({
    ...ask.firstEstimate.queryOptions({
      input: {
        symptoms: [...sheet.symptoms],
        changed: sheet.changed.map((one) => one.id),
        tasks: sheet.tasks?.map((one) => one.id) ?? null,
        limitMinor: sheet.limitMinor,
      },
      meta: { follows: { streams: ['shop'] } },
    }),
    enabled: estimable,
    placeholderData: keepPreviousData,
  });
  const first = estimable ? (estimate.data ?? null) : null;
  const shown = useDeferredValue(sheet);
  const papers = useMemo(
    () =>
      livePapers({
        sheet: shown,
        marks,
        settings,
        staff,
        estimate: first,
        at: epochMs(at),
        notIssued: t('counter.paper.not-issued'),
      }),
    [shown, marks, settings, staff, first, at, t],
  );
  const taking = useTakeIn((made) => write({ made }), onDone);
  const open = stillOpen(sheet, marks.sheet !== undefined && signedAlone(sheet).every((id) => marks[id]));
  return (
    <Frame
      here="counter"
      open={
        <>
          <h1>{t('counter.taking-in')}</h1>
          <span role="status" className="k-muted k-small">
            {keptAt === null ? '' : t('counter.kept', { at: clock(keptAt) })}
          </span>
        </>
      }
      onFreshTag={(tag) => {
        if (sheet.machine.known !== null) return false;
        write({ tag });
        return true;
      }}
      foot={
        <>
          <EstimateFoot estimate={first} limitMinor={sheet.limitMinor} settings={settings} />
          <div className="counter-foot-open">
            {open.length > 0 && (
              <p className="k-muted k-small">
                {t('counter.still-open', { what: open.map((id) => t(`counter.open.${id}`)).join(', ') })}
              </p>
            )}
            {taking.problem && <Problem slim {...taking.problem} />}
          </div>
          <div className="counter-foot-keys">
            <Key large onPress={() => setTurned(true)}>
              {t('counter.turn')}
            </Key>
            <Key
              kind="filled"
              large
              {...(open.length > 0 || taking.busy ? { whyNot: '' } : {})}
              onPress={() => void taking.run(sheet, marks, settings, papers)}
            >
              {t('counter.sign-and-print')}
            </Key>
          </div>
        </>
      }
    >
      <div className="counter-room">
        <Pane on="sheet" line="right" label={t('counter.pane.sheet')} padded={false} scrolls>
          <Sheet label={t('counter.taking-in')}>
            <OwnerRow />
            <MachineRow />
            <ToldRow />
            <ChangedRow />
            <OftenRow />
            <CameAlongRow />
            <PhotographsRow />
            <MoneyRow />
            <PromiseRow />
            <ConsentRow />
            <OwnSignatureRow />
            <SignatureRow />
            <SheetTear says={t('counter.tear.says')} after={t('counter.tear.after')} />
            <SecondTier />
            <p className="counter-anew">
              <Key kind="link" onPress={onAnew}>
                {t('counter.anew')}
              </Key>
            </p>
          </Sheet>
        </Pane>
        <Pane on="soft" label={t('counter.pane.papers')} scrolls>
          <AskedPane open={asked} onOpen={setAsked} />
          {!asked && <LivePaper papers={papers} row={row} />}
        </Pane>
      </div>
      {turned && <TurnedToOwner papers={papers} onBack={() => setTurned(false)} />}
    </Frame>
  );
}
