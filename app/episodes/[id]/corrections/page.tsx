import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { CorrectionsView } from './_components/corrections-view';
import { readCorrectionsPage } from './read-corrections-page';

export const metadata: Metadata = { title: 'Corrections' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly after?: string | string[] }>;
}

export default async function CorrectionsPage({ params, searchParams }: Props) {
  const { id } = await params;
  const { after } = await searchParams;
  const page = await readCorrectionsPage(
    id,
    new Date(),
    typeof after === 'string' ? after : undefined,
  );
  if (!page) notFound();
  return <CorrectionsView page={page} first={after === undefined} />;
}
