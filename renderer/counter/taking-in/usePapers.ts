import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useDeferredValue, useRef } from 'react';
import type { FirstEstimate } from '../../../core/contract/contract.ts';
import type { ShopSettings } from '../../../core/job/shop.ts';
import { queryOf } from '../../link/service.ts';
import { type Preview, usePreview } from '../../link/usePreview.ts';
import type { TakingInSheet } from './sheet.ts';
import { type SignTakingInInput, shownWhileWritten, signTakingInInput } from './signTakingInInput.ts';

export type Papers = Preview & {
  /** What the sheet comes to as a command, before it is signed. */
  readonly input: SignTakingInInput;
  /** The first figure of what was told; null while there is none. */
  readonly estimate: FirstEstimate | null;
};

/** The papers that a sheet becomes, as the very command would issue them, with the figure it says. */
export function usePapers(sheet: TakingInSheet, settings: ShopSettings): Papers {
  const estimable = sheet.tasks === null ? sheet.symptoms.length > 0 : sheet.tasks.length > 0;
  const first = useQuery({
    ...queryOf.firstEstimate.queryOptions({
      input: {
        symptoms: [...sheet.symptoms],
        changed: sheet.changed.map((one) => one.id),
        tasks: sheet.tasks?.map((one) => one.id) ?? null,
        limitMinor: sheet.limitMinor,
      },
      meta: { follows: { streams: ['shop'] } },
    }),
    enabled: estimable,
    placeholderData: keepPreviousData,
  });
  const estimate = estimable ? (first.data ?? null) : null;
  const input = signTakingInInput(sheet, settings, estimate?.figures ?? null);
  const now = useSame(shownWhileWritten(input));
  const deferred = useDeferredValue(now);
  const preview = usePreview('signTakingIn', deferred);
  const figured = !estimable || (first.data !== undefined && !first.isPlaceholderData) || first.isError;
  return { ...preview, settled: preview.settled && figured && deferred === now, input, estimate };
}

/** The value that there was before, while what it says is the same: what comes anew at every draw then counts as no change. */
function useSame<T>(value: T): T {
  const before = useRef(value);
  if (JSON.stringify(before.current) !== JSON.stringify(value)) before.current = value;
  return before.current;
}
