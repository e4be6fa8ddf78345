import { useState } from 'react';
import type { ShopSettings } from '../../../core/job/shop.ts';
import { Frame } from '../../Frame.tsx';
import { useDraft } from '../../kit/fields/draft.ts';
import { Ask } from '../../kit/keys/Ask.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { Contained } from '../../kit/shell/Contained.tsx';
import { Pane } from '../../kit/shell/Pane.tsx';
import { SheetTear, WrittenSheet } from '../../kit/shell/WrittenSheet';
import { useWords } from '../../kit/text/words.tsx';
import { drafts } from '../../link/drafts.ts';
import { RoomFailed } from '../../RoomFailed.tsx';
import { RowFailed } from '../../RowFailed.tsx';
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
import { freshSheet, signerOf, type TakingInSheet } from './sheet.ts';
import { TakingInProvider, useTakingIn } from './sheetContext.tsx';
import { signedAlone } from './signedAlone.ts';
import { stillOpen } from './stillOpen.ts';
import { ToldRow } from './ToldRow.tsx';
import { TurnedToOwner } from './TurnedToOwner.tsx';
import { useTakeIn } from './useTakeIn.ts';
import { wrongOnSheet } from './wrongOnSheet.ts';

/** Taking in: one sheet, top to bottom, beside the paper it becomes. What was typed is kept until it is written for good. */
export function TakingIn({ settings }: { readonly settings: ShopSettings }) {
  const [start] = useState(freshSheet);
  const draft = useDraft<TakingInSheet>('taking-in', start, drafts);
  const anew = () => {
    draft.done();
    draft.set(freshSheet());
  };
  return (
    <Contained fallback={(again) => <SheetFailed onAgain={again} onAnew={anew} />}>
      <TakingInProvider sheet={{ ...start, ...draft.value }} settings={settings} onChange={draft.set}>
        <Room keptAt={draft.keptAt} notKept={draft.notKept} onDone={draft.done} onAnew={anew} />
      </TakingInProvider>
    </Contained>
  );
}

/** A sheet that could not be shown, a kept draft included: it can be tried again, or dropped for a new one. */
function SheetFailed({ onAgain, onAnew }: { readonly onAgain: () => void; readonly onAnew: () => void }) {
  const { t } = useWords();
  return (
    <RoomFailed here="counter" onAgain={onAgain}>
      <Key
        onPress={() => {
          onAnew();
          onAgain();
        }}
      >
        {t('counter.anew')}
      </Key>
    </RoomFailed>
  );
}

/** The rows of the first tier, in the order in which one asks. */
const ROWS = [
  OwnerRow,
  MachineRow,
  ToldRow,
  ChangedRow,
  OftenRow,
  CameAlongRow,
  PhotographsRow,
  MoneyRow,
  PromisedRow,
  ConsentRow,
  OwnSignatureRow,
  SignatureRow,
];

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
  const open = stillOpen(sheet, signed, wrongOnSheet(sheet, Date.now(), settings.zone));
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
          <Contained of={sheet} fallback={(again) => <RowFailed onAgain={again} />}>
            <EstimateFoot estimate={papers.estimate} limitMinor={sheet.limitMinor} settings={settings} />
          </Contained>
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
            {ROWS.map((Line) => (
              <Contained key={Line.name} of={sheet} fallback={(again) => <RowFailed onAgain={again} />}>
                <Line />
              </Contained>
            ))}
            <SheetTear says={t('counter.tear.says')} after={t('counter.tear.after')} />
            <Contained of={sheet} fallback={(again) => <RowFailed onAgain={again} />}>
              <SecondTier />
            </Contained>
            <p className="counter-anew">
              <BeginAnew unwritten={keptAt === null} onAnew={onAnew} />
            </p>
          </WrittenSheet>
        </Pane>
        <Pane on="soft" label={t('counter.pane.papers')} scrolls>
          <AskedPane open={asked} onOpen={setAsked} />
          {!asked && (
            <Contained of={papers.shown} fallback={(again) => <RowFailed onAgain={again} />}>
              <LivePaper />
            </Contained>
          )}
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

/** Drops the sheet for an empty one: at once while nothing is on it, else when that was asked. */
function BeginAnew({ unwritten, onAnew }: { readonly unwritten: boolean; readonly onAnew: () => void }) {
  const { t } = useWords();
  const [asked, setAsked] = useState(false);
  return (
    <>
      <Key kind="link" onPress={() => (unwritten ? onAnew() : setAsked(true))}>
        {t('counter.anew')}
      </Key>
      <Ask
        open={asked}
        title={t('counter.anew-sure.title')}
        onClose={() => setAsked(false)}
        light
        keys={
          <>
            <Key onPress={() => setAsked(false)}>{t('counter.leave')}</Key>
            <Key
              onPress={() => {
                setAsked(false);
                onAnew();
              }}
            >
              {t('counter.anew-sure.drop')}
            </Key>
          </>
        }
      >
        <p>{t('counter.anew-sure.says')}</p>
      </Ask>
    </>
  );
}
