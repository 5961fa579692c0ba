import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { DishSwapsView } from '../_components/dish-swaps-view';
import { readDishSwaps } from '../read-dish-swaps';
import { stepsFrom } from '../steps-text';

export const metadata: Metadata = { title: 'Swaps' };

type Asked = Readonly<Record<'steps' | 'variant' | 'line', string | string[] | undefined>>;

interface Props {
  readonly params: Promise<{ readonly id: string; readonly dish: string }>;
  readonly searchParams: Promise<Asked>;
}

export default async function DishSwapsPage({ params, searchParams }: Props) {
  const { id, dish } = await params;
  const { steps, variant, line } = await searchParams;
  const page = await readDishSwaps(id, dish, {
    steps: stepsFrom(steps),
    variantId: typeof variant === 'string' ? variant : null,
    line: typeof line === 'string' ? line : null,
  });
  if (!page) notFound();
  return <DishSwapsView page={page} />;
}
