import type { Enquiry } from '../../../../core/job/enquiry.ts';
import { endedEnquiries, openEnquiries, type Reader } from '../../../../db/index.ts';

/** So many of those that came to nothing are listed: who asks again does so within weeks. Chosen, no source. */
const LATEST = 30;

/**
 * Enquiries that wait for our answer or for the owner to come, oldest first; then those that were turned down or lapsed, the
 * newest first.
 */
export async function enquiries(read: Reader): Promise<readonly Enquiry[]> {
  const found: Enquiry[] = [];
  for (const id of [...(await openEnquiries(read)), ...(await endedEnquiries(read, LATEST))]) {
    const enquiry = await read.load('enquiry', id);
    if (enquiry) found.push(enquiry);
  }
  return found;
}
