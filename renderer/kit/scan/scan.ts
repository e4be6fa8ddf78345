import { useEffect, useRef } from 'react';
import type { ScanRules } from './scanReader.ts';
import { watchScans } from './watchScans.ts';

export type { ScanRules } from './scanReader.ts';

/** Calls `onScan` for every code scanned while the component stands and listens, whatever has the focus. */
export function useScan(
  { check, prefix }: Pick<ScanRules, 'check' | 'prefix'>,
  onScan: (code: string) => void,
  listens = true,
): void {
  const heard = useRef(onScan);
  heard.current = onScan;
  useEffect(() => {
    if (!listens) return;
    return watchScans(window, { check, ...(prefix === undefined ? {} : { prefix }) }, (code) => heard.current(code));
  }, [check, prefix, listens]);
}
