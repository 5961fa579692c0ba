import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { SlateHead } from '../../../../_ui/slate-head';
import { readMerge } from '#lib/store/merge-foods';
import { readStoredFood } from '#lib/store/read-foods';
import { findFoods } from '#lib/store/reference-search';
import { ChooseFood } from './_components/choose-food';
import { MergeView } from './_components/merge-view';
import { foreseen } from './foreseen';

export const metadata: Metadata = { title: 'The same food twice' };

interface Props {
  readonly params: Promise<{ readonly foodId: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

const FOUND = 12;
const LONGEST = 200;

export default async function MergePage({ params, searchParams }: Props) {
  const { foodId } = await params;
  const stored = await readStoredFood(foodId);
  if (!stored?.own) notFound();
  const asked = await searchParams;
  const into = typeof asked.into === 'string' ? asked.into : null;
  const words = typeof asked.q === 'string' ? asked.q.slice(0, LONGEST).trim() : stored.food.name;
  const merge = into === null ? null : await readMerge(foodId, into);
  const found = merge?.ok ? [] : await findFoods(words, { take: FOUND });
  return (
    <>
      <SlateHead kind="The same food twice" title={stored.food.name} />
      <p className="mb-4">
        <Link className="link inline-flex min-h-11 items-center" href={`/pantry/foods/${foodId}`}>
          Back to the food
        </Link>
      </p>
      {merge?.ok ? (
        <MergeView merge={merge.value} foreseen={await foreseen(merge.value, new Date())} />
      ) : (
        <ChooseFood
          foodId={foodId}
          name={stored.food.name}
          words={words}
          found={found.filter(({ id }) => id !== foodId)}
          problem={merge?.problems[0]?.message ?? null}
        />
      )}
    </>
  );
}
