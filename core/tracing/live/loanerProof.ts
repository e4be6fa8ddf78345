/** How a shop part counts that is lent for a trial, as far as tracing goes by it. */
export type LoanerProof = 'trial-grade' | 'known-good' | 'exposed' | 'unproved';
