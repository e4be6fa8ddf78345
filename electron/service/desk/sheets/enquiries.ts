import type { Enquiry } from '../../../../core/job/enquiry.ts';
import { openEnquiries, type Reader } from '../../../../db/index.ts';

/** Enquiries that wait for our answer or for the owner to come, oldest first. */
export async function enquiries(read: Reader): Promise<readonly Enquiry[]> {
  const found: Enquiry[] = [];
  for (const id of await openEnquiries(read)) {
    const enquiry = await read.load('enquiry', id);
    if (enquiry) found.push(enquiry);
  }
  return found;
}
