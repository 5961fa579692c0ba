/** Said wherever claim words are judged: what the rules are, and what nobody here can decide. */
export const CLAIM_WORDS_CAUTION =
  'These are the published rules for labels and for advertising of food. Whether an episode is a commercial communication, and so whether they bind you, is for you and your counsel to say.';
