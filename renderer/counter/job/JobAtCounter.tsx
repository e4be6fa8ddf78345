import type { JobId } from '../../../core/ids.ts';
import type { ShopSettings } from '../../../core/job/shop.ts';
import { Frame } from '../../Frame.tsx';

export function JobAtCounter({ job }: { readonly job: JobId; readonly settings: ShopSettings }) {
  return (
    <Frame here="counter" open={<h1>{job}</h1>}>
      {null}
    </Frame>
  );
}
