import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { EmptyState } from '../../../../_ui/empty-state';
import { SlateHead } from '../../../../_ui/slate-head';
import { countFoodUses, readFoodUses } from '#lib/store/read-food-uses';
import { readStoredFood } from '#lib/store/read-foods';
import { UseList } from '../../../_components/use-list';

export const metadata: Metadata = { title: 'Where a food is used' };

interface Props {
  readonly params: Promise<{ readonly foodId: string }>;
  readonly searchParams: Promise<{ readonly after?: string | string[] }>;
}

export default async function UsesPage({ params, searchParams }: Props) {
  const { foodId } = await params;
  const stored = await readStoredFood(foodId);
  if (!stored) notFound();
  const { after } = await searchParams;
  const uses = await readFoodUses(foodId, { after: typeof after === 'string' ? after : undefined });
  const count = await countFoodUses(foodId);
  return (
    <>
      <SlateHead
        kind="Where it is used"
        title={stored.food.name}
        cells={[{ name: 'Ingredients', value: String(count) }]}
      />
      <p className="mb-4">
        <Link className="link inline-flex min-h-11 items-center" href={`/pantry/foods/${foodId}`}>
          Back to the food
        </Link>
      </p>
      {count === 0 ? (
        <EmptyState title="In no dish yet">
          Write it as an ingredient of a dish and choose this food there: then its dishes and
          episodes stand here.
        </EmptyState>
      ) : (
        <UseList uses={uses.rows} />
      )}
      {uses.next && (
        <Link
          className="link inline-flex min-h-11 items-center"
          href={`/pantry/foods/${foodId}/uses?after=${uses.next}`}
        >
          Earlier ingredients
        </Link>
      )}
    </>
  );
}
