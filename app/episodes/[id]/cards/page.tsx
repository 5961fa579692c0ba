import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { CardsView } from './_components/cards-view';
import { readLook } from './look';
import { readCards } from './read-cards';

export const metadata: Metadata = { title: 'Cards' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function CardsPage({ params, searchParams }: Props) {
  const { id } = await params;
  const cards = await readCards(id, readLook(await searchParams));
  if (!cards) notFound();
  return <CardsView cards={cards} />;
}
