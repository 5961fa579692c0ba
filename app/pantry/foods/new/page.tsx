import type { Metadata } from 'next';
import Link from 'next/link';
import { SlateHead } from '../../../_ui/slate-head';
import { readKitchen } from '#lib/store/read-kitchen';
import { NewFoodForm } from '../../_components/new-food-form';

export const metadata: Metadata = { title: 'New food' };

interface Props {
  readonly searchParams: Promise<{ readonly rule?: string | string[] }>;
}

/** The panel follows the rule that was asked for, else the place of the kitchen. */
export default async function NewFoodPage({ searchParams }: Props) {
  const { rule: asked } = await searchParams;
  const stored = await readKitchen();
  const here = stored?.kitchen.zone.startsWith('Europe/') ? 'eu' : 'us';
  const rule = asked === 'us' || asked === 'eu' ? asked : here;
  return (
    <>
      <SlateHead kind="Pantry" title="New food from a label" />
      <p className="mb-6 flex flex-wrap gap-x-6">
        {(['us', 'eu'] as const).map((each) => (
          <Link
            key={each}
            href={`/pantry/foods/new?rule=${each}`}
            aria-current={each === rule ? 'true' : undefined}
            className="link inline-flex min-h-11 items-center aria-[current]:font-bold"
          >
            {each === 'us' ? 'US label (Nutrition Facts)' : 'EU label (nutrition declaration)'}
          </Link>
        ))}
      </p>
      <NewFoodForm key={rule} rule={rule} />
    </>
  );
}
