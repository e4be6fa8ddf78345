import { applyEnquiry, type Enquiry } from '../../../core/job/enquiry.ts';
import type { Reader } from '../../../db/index.ts';

/** Enquiries that wait for our answer or for the owner to come, oldest first. */
export async function enquiries(read: Reader): Promise<readonly Enquiry[]> {
  const rows = await read.rows((tables) => tables.selectFrom('enquiry_now').where('stage', '=', 'asked').orderBy('at').select('enquiry').execute());
  const found: Enquiry[] = [];
  for (const row of rows) {
    const enquiry = await read.fold<Enquiry | null, never>(`enquiry:${row.enquiry}`, null, applyEnquiry);
    if (enquiry) found.push(enquiry);
  }
  return found;
}
