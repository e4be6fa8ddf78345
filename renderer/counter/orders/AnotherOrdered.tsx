import { useWords } from '../../kit/text/words.tsx';
import { OneOf } from '../fields/OneOf.tsx';

/** Is another part ordered in its place? It decides whether the owner still pays for one. */
export function AnotherOrdered(props: {
  readonly chosen: 'yes' | 'no' | null;
  readonly onChoose: (chosen: 'yes' | 'no' | null) => void;
}) {
  const { t } = useWords();
  return <OneOf asks={t('counter.order.another')} words="order.another-is" ids={['yes', 'no'] as const} {...props} />;
}
