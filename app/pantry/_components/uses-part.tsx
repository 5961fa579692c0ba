import Link from 'next/link';
import type { FoodUse } from '#lib/store/read-food-uses';
import { FoodSection } from './food-section';
import { UseList } from './use-list';

interface Props {
  readonly foodId: string;
  /** The last few ingredients of it. */
  readonly uses: readonly FoodUse[];
  readonly count: number;
}

/** Where a food is used: the last few ingredients, and the way to all of them. */
export function UsesPart({ foodId, uses, count }: Props) {
  return (
    <FoodSection id="uses" title="Where it is used">
      {count === 0 && <p className="text-soft">In no dish yet.</p>}
      <UseList uses={uses} />
      {count > uses.length && (
        <Link
          className="link inline-flex min-h-11 items-center print:hidden"
          href={`/pantry/foods/${foodId}/uses`}
        >
          All {count} ingredients
        </Link>
      )}
    </FoodSection>
  );
}
