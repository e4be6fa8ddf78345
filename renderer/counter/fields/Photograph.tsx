import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { useWords } from '../../kit/text/words.tsx';
import { queryOf } from '../../link/service.ts';

/** A stored photograph, by what it shows; empty once it is erased. */
export function Photograph({ blob, of }: { readonly blob: string; readonly of: string }) {
  const { t } = useWords();
  const file = useQuery(queryOf.photograph.queryOptions({ input: { blob }, meta: { follows: { streams: [] } } }));
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    if (!file.data) return;
    const made = URL.createObjectURL(file.data);
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [file.data]);
  if (url === null) return <span className="k-muted">{file.isError ? t('counter.erased') : ''}</span>;
  return <img src={url} alt={t('counter.photo.alt', { of })} height={120} />;
}
