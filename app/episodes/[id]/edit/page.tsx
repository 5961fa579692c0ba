import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { EditView } from './_components/edit-view';
import { readEditPage } from './read-edit-page';

export const metadata: Metadata = { title: 'The edit' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{
    readonly at?: string | string[];
    readonly made?: string | string[];
  }>;
}

/** Lines that became nothing, where the address says that the episode was made of its texts just now. */
function draftedOf(made: string | string[] | undefined): { readonly left: number } | null {
  return typeof made === 'string' && /^\d{1,6}$/.test(made) ? { left: Number(made) } : null;
}

export default async function EditPage({ params, searchParams }: Props) {
  const { id } = await params;
  const { at, made } = await searchParams;
  const page = await readEditPage(id, typeof at === 'string' ? at : null);
  if (!page) notFound();
  return <EditView page={page} drafted={draftedOf(made)} />;
}
