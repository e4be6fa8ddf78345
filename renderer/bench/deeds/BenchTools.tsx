import { useState } from 'react';
import { useNavigate } from 'react-router';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { Ask } from '../../kit/keys/Ask.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { CensusForm } from './CensusForm.tsx';
import { FactsOfPart } from './FactsOfPart.tsx';
import { LeaveForm } from './LeftCard.tsx';
import { NoteForm } from './NoteForm.tsx';
import { PlugForm } from './PlugForm.tsx';
import { toLookAt } from './ReportAgainst.tsx';
import { SeenForm } from './SeenForm.tsx';
import { SwitchesForm } from './SwitchesForm.tsx';

const TOOLS = ['seen', 'census', 'facts', 'switches', 'plugs', 'note', 'leave'] as const;
type Tool = (typeof TOOLS)[number];

/** What can be written down at any time beside the steps; each opens over the room. */
export function BenchTools({ sheet, only = TOOLS }: { readonly sheet: JobSheet; readonly only?: readonly Tool[] }) {
  const { t } = useWords();
  const go = useNavigate();
  const [open, setOpen] = useState<Tool | null>(null);
  const close = () => setOpen(null);
  const differ = toLookAt(sheet).length;
  return (
    <nav className="bench-tools" aria-label={t('bench.tools')}>
      {only.map((tool) => (
        <Key key={tool} kind="link" onPress={() => setOpen(tool)}>
          {t(`bench.${tool}`)}
        </Key>
      ))}
      <Key kind="link" onPress={() => go(`/counter/${sheet.job.id}`)}>
        {t('bench.to-counter')}
      </Key>
      {differ > 0 && only.includes('census') && (
        <Key kind="link" onPress={() => setOpen('census')}>
          {t('bench.against.look', { n: differ })}
        </Key>
      )}
      {open && (
        <Ask
          open
          title={t(`bench.${open}`)}
          onClose={close}
          width={820}
          keys={<Key onPress={close}>{t('kit.close')}</Key>}
        >
          {open === 'seen' && <SeenForm sheet={sheet} onDone={close} />}
          {open === 'census' && <CensusForm sheet={sheet} onDone={close} />}
          {open === 'facts' && <FactsOfPart sheet={sheet} />}
          {open === 'switches' && <SwitchesForm sheet={sheet} />}
          {open === 'plugs' && <PlugForm sheet={sheet} />}
          {open === 'note' && <NoteForm sheet={sheet} onDone={close} />}
          {open === 'leave' && <LeaveForm sheet={sheet} onDone={close} />}
        </Ask>
      )}
    </nav>
  );
}
