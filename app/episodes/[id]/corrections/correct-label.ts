/** What the journal calls the act that makes a correction. */
export const CORRECT = 'Correct what went out';
