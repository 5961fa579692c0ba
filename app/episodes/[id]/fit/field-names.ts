/** Names of the form's fields, each with the row that it is of behind a dash. */
export const FIELD = {
  target: 'target-',
  atLeast: 'atLeast-',
  atMost: 'atMost-',
  fixed: 'fixed-',
  low: 'low-',
  high: 'high-',
  step: 'step-',
} as const;

/** Any amount, where a step is chosen. */
export const ANY_STEP = 'any';
