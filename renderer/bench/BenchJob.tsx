import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useSearchParams } from 'react-router';
import stages from '../../assets/words/en/stages.json';
import type { JobId } from '../../core/ids.ts';
import type { Stage } from '../../core/stage.ts';
import { Frame } from '../Frame.tsx';
import { Notes } from '../jobs/Notes.tsx';
import { Problem } from '../kit/keys/Problem.tsx';
import { TagText } from '../kit/mark/TagText.tsx';
import { useWords } from '../kit/text/words.tsx';
import { jobRead, shopRead, wallRead } from '../link/reads.ts';
import { wordsOfError } from '../link/refusalWords.ts';
import { ConsentsHere } from './ConsentsHere.tsx';
import { LeftCard } from './deeds/LeftCard.tsx';
import { FittingBench } from './fitting/FittingBench.tsx';
import { JobInside } from './inside/JobInside.tsx';
import { JobStrip } from './log/JobStrip.tsx';
import { TracingBench } from './TracingBench.tsx';
import { WaitingBench } from './WaitingBench.tsx';

const TRACING: readonly Stage[] = ['taken-in', 'first-power-on', 'tracing'];
const FITTING: readonly Stage[] = ['fitting', 'proving', 'home-as-it-came'];

/** One machine at the bench, at its present stage. */
export function BenchJob({ job }: { readonly job: JobId }) {
  const words = useWords();
  const { t } = words;
  const [params] = useSearchParams();
  const read = useQuery(jobRead(job));
  const shop = useQuery(shopRead());
  const wall = useQuery(wallRead());
  const [scanned, setScanned] = useState<string | null>(params.get('part'));
  const sheet = read.data;
  if (!sheet)
    return (
      <Frame here="bench" touch="bench" open={<h1>{t('app.rooms.bench')}</h1>}>
        {read.isError ? (
          <Problem {...wordsOfError(read.error)} />
        ) : (
          <p role="status" className="bench-choice">
            {t('app.waiting')}
          </p>
        )}
      </Frame>
    );
  const { stage, promised } = sheet.job;
  const settings = shop.data?.settings;
  const used = sheet.parts.flatMap(({ place }) => (place.at === 'tray' && place.job === job ? [place.tray] : []));
  const tray = used[0] ?? t('bench.tray');
  const named = sheet.job.verdict && 'part' in sheet.job.verdict ? sheet.job.verdict.part : null;
  const inside = (kinds: ReadonlySet<string>) => (
    <JobInside
      sheet={sheet}
      wall={wall.data}
      benches={settings?.benches ?? []}
      tray={tray}
      blame={{ kinds, named }}
      scanned={scanned}
      onPut={() => setScanned(null)}
    />
  );
  return (
    <Frame
      here="bench"
      touch="bench"
      unreadable={sheet.unreadable}
      onScan={(found) => {
        if (found.is !== 'part') return false;
        setScanned(found.id);
        return true;
      }}
      open={
        <>
          <h1>{sheet.machine.tag ? <TagText tag={sheet.machine.tag} /> : sheet.machine.called}</h1>
          <span className="bench-called">{sheet.owner.name.value ?? sheet.machine.called}</span>
          <span className="k-muted k-small">{stages[stage]}</span>
          {promised && <span className="k-small">{t('bench.promised', { at: words.dayClock(promised.at) })}</span>}
        </>
      }
    >
      {TRACING.includes(stage) ? (
        <TracingBench sheet={sheet} wall={wall.data} currency={settings?.currency} tray={tray} inside={inside} />
      ) : (
        <div className="bench bench-two">
          <div className="bench-look">
            <ConsentsHere job={sheet.job} />
            <Notes job={sheet.job} />
            <LeftCard sheet={sheet} />
            <div className="bench-inside">{inside(new Set())}</div>
          </div>
          <div className="bench-side">
            {FITTING.includes(stage) ? (
              <FittingBench sheet={sheet} tray={tray} keptDays={settings?.rules.keptDays ?? 90} />
            ) : (
              <WaitingBench sheet={sheet} tray={tray} />
            )}
          </div>
          <div className="bench-strip">
            <JobStrip sheet={sheet} />
          </div>
        </div>
      )}
    </Frame>
  );
}
