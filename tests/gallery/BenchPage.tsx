import { useState } from 'react';
import { parseTag } from '../../core/custody/tag.ts';
import { FarView } from '../../renderer/bench/next/FarView.tsx';
import { NextStep } from '../../renderer/bench/next/NextStep.tsx';
import type { Running } from '../../renderer/bench/next/stepView.ts';
import { ToldSeen } from '../../renderer/bench/next/ToldSeen.tsx';
import { InsideView } from '../../renderer/kit/inside/InsideView.tsx';
import type { ProblemWords } from '../../renderer/kit/keys/Problem.tsx';
import { Strip } from '../../renderer/kit/line/Strip.tsx';
import { MarkLegend } from '../../renderer/kit/mark/MarkLegend.tsx';
import { TagText } from '../../renderer/kit/mark/TagText.tsx';
import { Ladder } from '../../renderer/kit/plot/Ladder.tsx';
import { useScan } from '../../renderer/kit/scan/scan.ts';
import { Pane } from '../../renderer/kit/shell/Pane.tsx';
import { RoomShell } from '../../renderer/kit/shell/RoomShell.tsx';
import { aTag } from '../builders/aTag.ts';
import { ENTRIES, FULL, NOW, OTHERS, PLACES, SLOTS, STEP, SUSPECTS, UNKNOWN } from './benchData.ts';
import { ROOMS } from './rooms.ts';
import './bench.css';

const asked = new URLSearchParams(location.search);

const isTag = (code: string) => parseTag(code) !== undefined;

export function BenchPage() {
  useScan({ check: isTag }, () => {});
  const [running, setRunning] = useState<Running | undefined>(
    asked.has('running') ? { phase: 'waiting', since: NOW - 72_000, seconds: 240 } : undefined,
  );
  const [chosen, setChosen] = useState<string>();
  const [far, setFar] = useState(asked.has('far'));
  const [said, setSaid] = useState('');
  const slots = asked.has('nothing') ? [] : asked.has('unknown') ? UNKNOWN : asked.has('full') ? FULL : SLOTS;
  const refuse: ProblemWords = {
    says: 'E6H W34 5 holds the slot.',
    unchanged: 'Nothing was moved.',
    next: 'Take it out first, or choose another.',
  };
  return (
    <RoomShell
      touch="bench"
      rooms={ROOMS}
      here="bench"
      open={
        <>
          <h1>
            <TagText tag={aTag('F6C6KA5')} />
          </h1>
          <span>Judith Amberley</span>
          <span className="k-muted k-small">Tracing</span>
          <span className="k-muted k-small">
            Promised <b style={{ color: 'var(--ink)' }}>Fri 11:00</b>
          </span>
        </>
      }
    >
      <div className={running ? 'g-bench g-bench-running' : 'g-bench'}>
        <div className="g-bench-look">
          <ToldSeen
            told="Powers on, no picture."
            quote="Stays dark since we moved."
            seen="Restarts seven times, then dark."
            agree={false}
            after="Agreed up to £150."
          />
          <div className="g-bench-inside">
            <InsideView
              slots={slots}
              places={PLACES}
              onMove={async (part, to) => {
                setSaid(`${part.id} ${JSON.stringify(to)}`);
                return to.to === 'slot' && to.slot === 'B1' ? refuse : null;
              }}
            />
          </div>
          <div className="g-bench-legend">
            <MarkLegend />
          </div>
          <output data-said={said} className="k-heard" />
        </div>
        {!running && (
          <Pane on="sheet" line="left" padded={false}>
            <Ladder suspects={SUSPECTS} moved={{ id: 'channel', from: 0.17 }} />
          </Pane>
        )}
        <Pane on="sheet" padded={false} line={running ? 'left' : 'none'}>
          <NextStep
            step={STEP}
            others={OTHERS}
            onOther={() => {}}
            now={NOW}
            {...(running ? { running } : {})}
            onStart={() => setRunning({ phase: 'hands-on', since: NOW, before: 0 })}
            onPhase={(phase) =>
              setRunning(phase === 'waiting' ? { phase, since: NOW, seconds: 240 } : { phase, since: NOW, before: 60 })
            }
            onOutcome={(id) => setSaid(id)}
            onSomethingElse={() => setSaid('else')}
            back={{ says: 'Back as it came', onPress: () => {} }}
          />
        </Pane>
        <div className="g-bench-strip">
          <Strip
            entries={ENTRIES}
            now={NOW}
            totals={
              <>
                <b>35 min</b> hands-on, <b>35</b> waiting, <b>18</b> for the owner’s word
              </>
            }
            {...(chosen === undefined ? {} : { chosen })}
            onChoose={setChosen}
          />
        </div>
      </div>
      {far && (
        <FarView
          tag={aTag('F6C6KA5')}
          about="told dark, seen restarting"
          step={{ ...STEP, heading: 'Our processor' }}
          running={{ phase: 'waiting', since: NOW - 72_000, seconds: 120 }}
          now={NOW}
          onOutcome={setSaid}
          onSomethingElse={() => setSaid('else')}
          onLeave={() => setFar(false)}
        />
      )}
    </RoomShell>
  );
}
