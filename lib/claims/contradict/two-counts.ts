import {
  contradiction,
  type Contradiction,
  type PlacedStatement,
} from '#lib/claims/contradict/contradiction';
import { groupedBy } from '#lib/claims/contradict/grouped-by';
import { isTitle } from '#lib/claims/contradict/said-values';
import type { Statement } from '#lib/claims/statement';

type Counted = PlacedStatement & { readonly statement: Statement & { readonly kind: 'portions' } };

/**
 * Two counts of what one dish makes, in two texts: 'serves 1' in the description and 'makes two portions' in the video.
 * Within one text a second count may be of double the amount, or of smaller ones.
 */
export function twoCounts(rows: readonly PlacedStatement[]): Contradiction[] {
  const counted = rows.filter(isCount);
  const things = groupedBy(
    counted,
    ({ place, statement }) => `${place.segmentId ?? ''} ${statement.unit}`,
  );
  return [...things.values()].flatMap((all) => {
    const [first] = all;
    const other = all.find((each) => first && isOther(first, each));
    if (!first || !other) return [];
    const sides = [first, other].map((one) => ({
      value: countText(one),
      said: all.filter((each) => isSame(each, one)),
    }));
    return [
      contradiction({
        kind: 'portions',
        nutrient: null,
        segmentId: first.place.segmentId,
        words: `${sides[0]?.value ?? ''} and ${sides[1]?.value ?? ''} are said of the same dish`,
        sides,
      }),
    ];
  });
}

function isCount(row: PlacedStatement): row is Counted {
  const { statement, place } = row;
  if (statement.kind !== 'portions' || statement.unsure || place.segmentId === null) return false;
  return (statement.hedge === 'none' || statement.hedge === 'between') && !isTitle(row);
}

/** '2 portions', '2 to 3 portions'. */
function countText({ statement: { low, high, unit } }: Counted): string {
  return `${low === high ? `${low}` : `${low} to ${high}`} ${unit}${high === 1 ? '' : 's'}`;
}

const isSame = ({ statement: a }: Counted, { statement: b }: Counted) =>
  a.low === b.low && a.high === b.high;

const isOther = (a: Counted, b: Counted) =>
  a.place.textId !== b.place.textId &&
  (a.statement.high < b.statement.low || b.statement.high < a.statement.low);
