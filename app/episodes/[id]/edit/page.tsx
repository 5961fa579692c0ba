import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { EditView } from './_components/edit-view';
import { readEditPage } from './read-edit-page';

export const metadata: Metadata = { title: 'The edit' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly at?: string | string[] }>;
}

export default async function EditPage({ params, searchParams }: Props) {
  const { id } = await params;
  const { at } = await searchParams;
  const page = await readEditPage(id, typeof at === 'string' ? at : null);
  if (!page) notFound();
  return <EditView page={page} />;
}
