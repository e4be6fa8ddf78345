import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { Ask } from '../../kit/keys/Ask.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { CensusForm } from './CensusForm.tsx';

/** Where something waits for the census, the key that opens it. */
export function CensusKey({ sheet }: { readonly sheet: JobSheet }) {
  const { t } = useWords();
  const [open, setOpen] = useState(false);
  const close = () => setOpen(false);
  return (
    <>
      <Key onPress={() => setOpen(true)}>{t('bench.census-first')}</Key>
      {open && (
        <Ask
          open
          title={t('bench.census')}
          onClose={close}
          width={820}
          keys={<Key onPress={close}>{t('kit.close')}</Key>}
        >
          <CensusForm sheet={sheet} onDone={close} />
        </Ask>
      )}
    </>
  );
}
