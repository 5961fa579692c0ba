import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { readFoodVersions, readStoredFood } from '#lib/store/read-foods';
import { FoodView } from '../../_components/food-view';

interface Props {
  readonly params: Promise<{ readonly foodId: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const stored = await readStoredFood((await params).foodId);
  return { title: stored?.food.name ?? 'No such food' };
}

export default async function FoodPage({ params }: Props) {
  const { foodId } = await params;
  const stored = await readStoredFood(foodId);
  if (!stored) notFound();
  return <FoodView stored={stored} versions={await readFoodVersions(foodId)} />;
}
