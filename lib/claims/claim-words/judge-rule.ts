import type { Verdict } from '#lib/claims/judged';
import type { ClaimFacts } from './claim-facts';
import type { ClaimRule } from './claim-rule';
import { judgeCondition, type ConditionJudged } from './judge-condition';

/** A rule held against a dish: the way that comes out best, with each of its numbers. */
export interface RuleJudged {
  readonly rule: ClaimRule;
  readonly verdict: Verdict;
  readonly rows: readonly ConditionJudged[];
}

/** Of all of them: off if one is, then unknown, then edge. */
const WORST: readonly Verdict[] = ['off', 'unknown', 'edge', 'agrees'];
/** Of any of them: agrees if one does, then edge, then unknown. */
const BEST: readonly Verdict[] = ['agrees', 'edge', 'unknown', 'off'];

function first(order: readonly Verdict[], verdicts: readonly Verdict[]): Verdict {
  return order.find((each) => verdicts.includes(each)) ?? 'unknown';
}

/**
 * Holds a dish against a rule: any of its ways will do, and all conditions of a way must.
 * @param raccMg the reference amount; null where nobody said
 * @param drink by what holds for drinks, per 100 ml
 */
export function judgeRule(
  rule: ClaimRule,
  facts: ClaimFacts,
  raccMg: number | null,
  drink: boolean,
): RuleJudged {
  const ways = rule.ways.map((conditions) => {
    const rows = conditions.flatMap((each) => judgeCondition(each, facts, raccMg, drink));
    return {
      rows,
      verdict: first(
        WORST,
        rows.map((row) => row.verdict),
      ),
    };
  });
  const verdict = first(
    BEST,
    ways.map((way) => way.verdict),
  );
  const told = ways.find((way) => way.verdict === verdict);
  return { rule, verdict, rows: told?.rows ?? [] };
}

/** Whether a rule counts in reference amounts. */
export function needsReferenceAmount({ ways }: ClaimRule): boolean {
  return ways.some((conditions) =>
    conditions.some(({ measure }) => measure.kind === 'mass' && measure.per === 'racc'),
  );
}
