/** What was asked of a computing thread that was ended on purpose: nobody waits for the answer, and nothing is broken. */
export class Ended extends Error {
  override readonly name = 'Ended';
}
