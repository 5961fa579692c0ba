import type { Metadata } from 'next';
import { SlateHead } from '../_ui/slate-head';
import { readOwnFoods } from '#lib/store/read-foods';
import { readKitchen } from '#lib/store/read-kitchen';
import { readPantry } from '#lib/store/read-pantry';
import { findFoods } from '#lib/store/reference-search';
import { localDate } from '#lib/units/local-date';
import { LookUp } from './_components/look-up';
import { OwnFoods } from './_components/own-foods';
import { Stock } from './_components/stock';

export const metadata: Metadata = { title: 'Pantry' };

interface Props {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

const FOUND = 20;
const LONGEST = 200;

export default async function PantryPage({ searchParams }: Props) {
  const asked = await searchParams;
  const one = (name: string) => {
    const value = asked[name];
    return typeof value === 'string' ? value : undefined;
  };
  const query = (one('q') ?? '').slice(0, LONGEST).trim();
  const stored = await readKitchen();
  return (
    <>
      <SlateHead kind="Pantry" title="Foods and stock" />
      <LookUp query={query} found={query === '' ? null : await findFoods(query, { take: FOUND })} />
      <section aria-labelledby="stock" className="mt-12">
        <h2 id="stock">In stock</h2>
        <Stock
          lots={await readPantry({ after: one('lots') })}
          editing={one('lot') ?? null}
          today={localDate(new Date(), stored?.kitchen.zone ?? 'UTC')}
        />
      </section>
      <section aria-labelledby="foods" className="mt-12">
        <h2 id="foods">Own foods</h2>
        <OwnFoods foods={await readOwnFoods({ after: one('foods') })} />
      </section>
    </>
  );
}
