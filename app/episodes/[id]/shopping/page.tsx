import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { shoppingList } from '#lib/shopping/shopping-list';
import { readEpisodeFile } from '#lib/store/read-episode';
import { ShoppingView } from './_components/shopping-view';

export const metadata: Metadata = { title: 'Shopping' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function ShoppingPage({ params }: Props) {
  const { id } = await params;
  const file = await readEpisodeFile(id, new Date().toISOString());
  if (!file) notFound();
  return <ShoppingView episodeId={id} list={shoppingList(file)} />;
}
