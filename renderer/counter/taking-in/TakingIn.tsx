import { useState } from 'react';
import type { ShopSettings } from '../../../core/job/shop.ts';
import { Frame } from '../../Frame.tsx';
import { useDraft } from '../../kit/fields/draft.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { Pane } from '../../kit/shell/Pane.tsx';
import { SheetTear, WrittenSheet } from '../../kit/shell/WrittenSheet';
import { useWords } from '../../kit/text/words.tsx';
import { drafts } from '../../link/drafts.ts';
import { AskedPane } from '../enquiries/AskedPane.tsx';
import { ContentChanged } from '../fields/ContentChanged.tsx';
import { isSignedBy } from '../fields/signedInput.ts';
import { CameAlongRow } from './CameAlongRow.tsx';
import { ChangedRow, OftenRow } from './ChangedRow.tsx';
import { ConsentRow, OwnSignatureRow, SignatureRow } from './ConsentRow.tsx';
import { EstimateFoot } from './EstimateFoot.tsx';
import { LivePaper } from './LivePaper.tsx';
import { MachineRow } from './MachineRow.tsx';
import { MoneyRow, PromisedRow } from './MoneyRow.tsx';
import { OwnerRow } from './OwnerRow.tsx';
import { PhotographsRow } from './PhotographsRow.tsx';
import { SecondTier } from './SecondTier.tsx';
import { freshSheet, signerOf, stillOpen, type TakingInSheet } from './sheet.ts';
import { TakingInProvider, useTakingIn } from './sheetContext.tsx';
import { signedAlone } from './signedAlone.ts';
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
        notKept={draft.notKept}
        onDone={draft.done}
        onAnew={() => {
          draft.done();
          draft.set(freshSheet());
        }}
      />
    </TakingInProvider>
  );
}

function Room({
  keptAt,
  notKept,
  onDone,
  onAnew,
}: {
  readonly keptAt: number | null;
  readonly notKept: boolean;
  readonly onDone: () => void;
  readonly onAnew: () => void;
}) {
  const { t, clock } = useWords();
  const { sheet, settings, marks, write, papers, unsign } = useTakingIn();
  const [turned, setTurned] = useState(false);
  const [asked, setAsked] = useState(false);
  const taking = useTakeIn(onDone);
  const signer = signerOf(sheet.owner);
  const signed = ['sheet', ...signedAlone(sheet)].every((id) => isSignedBy(marks[id], signer));
  const open = stillOpen(sheet, signed);
  return (
    <Frame
      here="counter"
      open={
        <>
          <h1>{t('counter.taking-in')}</h1>
          <span role="status" className="k-muted k-small">
            {notKept ? t('counter.not-kept') : keptAt === null ? '' : t('counter.kept', { at: clock(keptAt) })}
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
          <EstimateFoot estimate={papers.estimate} limitMinor={sheet.limitMinor} settings={settings} />
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
              onPress={() => void taking.run(sheet, marks, papers.input)}
            >
              {t('counter.sign-and-print')}
            </Key>
          </div>
        </>
      }
    >
      <div className="counter-room">
        <Pane on="sheet" line="right" label={t('counter.pane.sheet')} padded={false} scrolls>
          <WrittenSheet label={t('counter.taking-in')}>
            <OwnerRow />
            <MachineRow />
            <ToldRow />
            <ChangedRow />
            <OftenRow />
            <CameAlongRow />
            <PhotographsRow />
            <MoneyRow />
            <PromisedRow />
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
          </WrittenSheet>
        </Pane>
        <Pane on="soft" label={t('counter.pane.papers')} scrolls>
          <AskedPane open={asked} onOpen={setAsked} />
          {!asked && <LivePaper />}
        </Pane>
      </div>
      {turned && <TurnedToOwner onBack={() => setTurned(false)} />}
      <ContentChanged
        refusal={taking.refusal}
        signed={Object.values(marks).map(({ under }) => under)}
        onClose={() => {
          taking.forget();
          unsign();
        }}
      />
    </Frame>
  );
}
