import { useState } from 'react';
import type { TracingSheet } from '../../core/contract/screens.ts';
import { Ask } from '../kit/keys/Ask.tsx';
import { Key } from '../kit/keys/Key.tsx';
import { Ladder } from '../kit/plot/Ladder.tsx';
import { useWords } from '../kit/text/words.tsx';
import { faultName, kindName } from '../terms/terms.ts';
import { ladderOf } from './ladderOf.ts';

/** Parts climb and fall on the ladder; a part's name opens its faults, each with its odds. */
export function Suspects({ tracing }: { readonly tracing: TracingSheet }) {
  const { t, odds } = useWords();
  const [part, setPart] = useState<string | null>(null);
  return (
    <>
      <Ladder {...ladderOf(tracing)} onChoose={setPart} />
      {part !== null && (
        <Ask
          open
          light
          title={kindName(part)}
          onClose={() => setPart(null)}
          keys={<Key onPress={() => setPart(null)}>{t('kit.close')}</Key>}
        >
          <ul className="bench-list">
            {tracing.suspects
              .filter((one) => one.part === part)
              .map((one) => (
                <li key={one.fault}>
                  <span>{faultName(one.fault)}</span>
                  <span>{odds(one.p)}</span>
                </li>
              ))}
          </ul>
        </Ask>
      )}
    </>
  );
}
