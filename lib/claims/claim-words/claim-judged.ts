import type { ClaimWorking, HeldAgainst, Judged, Verdict } from '#lib/claims/judged';
import type { Statement } from '#lib/claims/statement';
import type { ClaimFacts } from './claim-facts';
import type { ConditionJudged } from './judge-condition';

/** What is known of a claim word beside its words. */
export interface ClaimContext {
  /** What stands before it in the text; "97 % " makes another claim of "fat free". */
  readonly before?: string;
  /** What the dish is compared with, where something is. */
  readonly comparedWith?: ClaimFacts | null;
}

/** A claim word with what the rule of the region says of it. */
export interface ClaimJudged
  extends Pick<Judged, 'verdict' | 'why' | 'difference' | 'sayInstead' | 'remark'>, ClaimWorking {
  readonly against: HeldAgainst;
  /** Each number of the rule with what the dish has. */
  readonly rows: readonly ConditionJudged[];
}

export type ClaimStatement = Extract<Statement, { readonly kind: 'claimWord' }>;

/** A judgement without numbers of its own. */
export function plain(
  dish: ClaimFacts,
  verdict: Verdict,
  why: string,
  section: string | null,
): ClaimJudged {
  return {
    verdict,
    why,
    difference: null,
    sayInstead: null,
    remark: null,
    against: { kind: 'rule', segmentId: dish.segmentId },
    section,
    rows: [],
    offers: [],
    asMeal: null,
  };
}

/** What a page shows of the working beside the verdict. */
export function claimWorking({ section, rows, offers, asMeal }: ClaimJudged): ClaimWorking {
  const shown = rows.map(({ threshold, per, has, verdict }) => ({ threshold, per, has, verdict }));
  return { section, rows: shown, offers, asMeal };
}

/** `unknown`, with its cause. */
export const cannotSay = (dish: ClaimFacts, cause: string): ClaimJudged =>
  plain(dish, 'unknown', sentence(`can’t say: ${cause}`), null);

/** Ends with a full stop. */
export const sentence = (words: string) => (/[.?]$/.test(words) ? words : `${words}.`);
