import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { labelsToLookAt } from '#lib/shopping/labels-to-look-at';
import { readListEvents } from '#lib/store/read-list-events';
import { ShoppingView } from './_components/shopping-view';
import { loadList } from './load-list';

export const metadata: Metadata = { title: 'Shopping' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function ShoppingPage({ params, searchParams }: Props) {
  const [{ id }, asked] = [await params, await searchParams];
  const query = new URLSearchParams();
  for (const name of ['from', 'to']) {
    const value = asked[name];
    if (typeof value === 'string') query.set(name, value);
  }
  const loaded = await loadList(id, query);
  if (!loaded) notFound();
  const first = await readListEvents(loaded.asked.scope);
  const { files, today } = loaded;
  const labels = labelsToLookAt(first.events, files, today);
  return <ShoppingView episodeId={id} {...{ ...loaded, first, labels }} />;
}
