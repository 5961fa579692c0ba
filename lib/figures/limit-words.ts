import type { LimitRelation, LimitVerdict } from '#lib/figures/judge-limit';

/** How a limit is said before its amount. */
export const LIMIT_WORDS: Readonly<Record<LimitRelation, string>> = {
  atLeast: 'at least',
  atMost: 'at most',
  about: 'about',
};

/** What a figure says of a limit. */
export const VERDICT_WORDS: Readonly<Record<LimitVerdict, string>> = {
  met: 'met',
  cannotTell: 'cannot tell, the range crosses it',
  missed: 'missed',
  unknown: 'can’t say, the number is open',
};

/** The same where there is little room; the range beside it shows why. */
export const SHORT_VERDICTS: Readonly<Record<LimitVerdict, string>> = {
  met: 'met',
  cannotTell: 'cannot tell',
  missed: 'missed',
  unknown: 'can’t say',
};
