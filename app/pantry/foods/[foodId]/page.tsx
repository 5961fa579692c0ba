import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import type { Food } from '#lib/foods/food';
import { readFood, readFoodVersions, readStoredFood } from '#lib/store/read-foods';
import { findFoods } from '#lib/store/reference-search';
import { FoodView } from '../../_components/food-view';
import { SecondWitnessPart } from '../../_components/second-witness-part';

interface Props {
  readonly params: Promise<{ readonly foodId: string }>;
  readonly searchParams: Promise<{ readonly witness?: string | readonly string[] }>;
}

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  const stored = await readStoredFood((await params).foodId);
  return { title: stored?.food.name ?? 'No such food' };
}

const FOUND = 12;
const LONGEST = 200;

export default async function FoodPage({ params, searchParams }: Props) {
  const { foodId } = await params;
  const stored = await readStoredFood(foodId);
  if (!stored) notFound();
  const { food, own, revs } = stored;
  const asked = (await searchParams).witness;
  const query = (typeof asked === 'string' ? asked : '').slice(0, LONGEST).trim();
  const witness = own && (
    <SecondWitnessPart
      food={food}
      rev={revs[foodId] ?? 0}
      witness={food.witnessId === null ? null : await readFood(food.witnessId)}
      query={query}
      found={query === '' ? null : await tableFoods(query)}
    />
  );
  return <FoodView stored={stored} versions={await readFoodVersions(foodId)} witness={witness} />;
}

/** Foods of a published table that fit the words. */
async function tableFoods(query: string): Promise<readonly Food[]> {
  const found = await findFoods(query, { take: 2 * FOUND });
  return found.filter(({ kind }) => kind === 'reference').slice(0, FOUND);
}
