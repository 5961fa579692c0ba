import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { SlateHead } from '../../../../_ui/slate-head';
import { compareVersions } from '#lib/foods/compare-versions';
import { readFoodVersions, readStoredFood } from '#lib/store/read-foods';
import { ReadingsTable } from './readings-table';

export const metadata: Metadata = { title: 'Readings beside each other' };

interface Props {
  readonly params: Promise<{ readonly foodId: string }>;
  readonly searchParams: Promise<{ readonly from?: string | string[] }>;
}

/** Readings beside each other on one page. */
const BESIDE = 4;

export default async function ReadingsPage({ params, searchParams }: Props) {
  const { foodId } = await params;
  const stored = await readStoredFood(foodId);
  if (!stored) notFound();
  const versions = await readFoodVersions(foodId);
  const { from } = await searchParams;
  const asked = versions.findIndex(({ id }) => id === from);
  const rest = asked === -1 ? versions : versions.slice(asked);
  const [shown, next] = [rest.slice(0, BESIDE), rest.at(BESIDE)];
  return (
    <>
      <SlateHead
        kind="Readings beside each other"
        title={stored.food.name}
        cells={[{ name: 'Readings', value: String(versions.length) }]}
      />
      <p className="mb-4">
        <Link className="link inline-flex min-h-11 items-center" href={`/pantry/foods/${foodId}`}>
          Back to the food
        </Link>
      </p>
      <ReadingsTable name={stored.food.name} versions={shown} rows={compareVersions(shown)} />
      {next && (
        <Link
          className="link inline-flex min-h-11 items-center"
          href={`/pantry/foods/${foodId}/readings?from=${shown.at(-1)?.id ?? ''}`}
        >
          Earlier readings
        </Link>
      )}
    </>
  );
}
