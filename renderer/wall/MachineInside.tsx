import { useQuery } from '@tanstack/react-query';
import type { MachineId } from '../../core/ids.ts';
import { useWords } from '../kit/text/words.tsx';
import { thenAndNowRead } from '../link/reads.ts';

/** What was inside a machine when it was taken in against what is inside now, and whose. */
export function MachineInside({ machine }: { readonly machine: MachineId }) {
  const { t } = useWords();
  const found = useQuery(thenAndNowRead(machine)).data;
  if (!found) return null;
  return (
    <details className="wall-path">
      <summary>{t('wall.inside', { called: found.called })}</summary>
      <ul>
        {found.slots.map(({ slot, came, now, same }) => (
          <li key={slot}>
            {slot}: {now ? t(now.whose === 'shop' ? 'wall.ours' : 'wall.theirs', { name: now.name }) : t('wall.empty')}
            {same
              ? `, ${t('wall.as-it-came')}`
              : `; ${came ? t('wall.was', { name: came.name }) : t('wall.was-empty')}`}
          </li>
        ))}
      </ul>
    </details>
  );
}
