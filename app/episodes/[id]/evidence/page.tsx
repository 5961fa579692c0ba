import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { EvidenceView } from './_components/evidence-view';
import { readEvidence } from './read-evidence';

export const metadata: Metadata = { title: 'Evidence' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function EvidencePage({ params }: Props) {
  const { id } = await params;
  const read = await readEvidence(id);
  if (!read) notFound();
  return <EvidenceView episodeId={id} {...read} />;
}
