import type { Judged } from '#lib/claims/judged';

/** What the working says of one statement, before it has a place among the rows. */
export type Verdicted = Pick<
  Judged,
  'verdict' | 'why' | 'difference' | 'sayInstead' | 'remark' | 'against'
>;

/**
 * Nothing can be said, and why.
 * @param cause what stands behind "can’t say: "
 * @example cannotSay('which dish?').why // 'can’t say: which dish?'
 */
export function cannotSay(
  cause: string,
  more: Partial<Pick<Verdicted, 'remark' | 'against'>> = {},
): Verdicted {
  return {
    verdict: 'unknown',
    why: `can’t say: ${cause}`,
    difference: null,
    sayInstead: null,
    remark: null,
    against: null,
    ...more,
  };
}
