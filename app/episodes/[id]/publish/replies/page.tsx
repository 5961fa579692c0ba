import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { RepliesView } from './_components/replies-view';
import { readReplies, type RepliesAsked } from './read-replies';

export const metadata: Metadata = { title: 'I get a different number' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<
    Readonly<Record<keyof RepliesAsked, string | string[] | undefined>>
  >;
}

export default async function RepliesPage({ params, searchParams }: Props) {
  const { id } = await params;
  const asked = await searchParams;
  const one = (key: keyof RepliesAsked) => {
    const value = asked[key];
    return typeof value === 'string' && value !== '' ? value : null;
  };
  const page = await readReplies(id, {
    ...{ reply: one('reply'), number: one('number'), nutrient: one('nutrient') },
    ...{ of: one('of'), slip: one('slip'), page: one('page') },
  });
  if (!page) notFound();
  return <RepliesView page={page} />;
}
