import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { swapTable } from '#lib/swap/swap-words';
import { lastAct } from '../../last-act';
import { SwapsView } from './_components/swaps-view';
import { readSwaps } from './read-swaps';

export const metadata: Metadata = { title: 'Swaps' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function SwapsPage({ params }: Props) {
  const { id } = await params;
  const read = await readSwaps(id);
  if (!read) notFound();
  const { file, live, lock, revs } = read;
  const variants = live.publish?.variants ?? [];
  return (
    <SwapsView
      page={{
        ...{ file, variants, revs, lock },
        table: swapTable(file, variants),
        last: await lastAct(live),
      }}
    />
  );
}
