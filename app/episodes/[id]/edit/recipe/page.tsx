import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { readEpisodeFile } from '#lib/store/read-episode';
import { ButtonLink } from '../../../../_ui/button';
import { SlateHead } from '../../../../_ui/slate-head';
import { RecipeForm } from './_components/recipe-form';

export const metadata: Metadata = { title: 'Recipe from a page' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function RecipePage({ params }: Props) {
  const { id } = await params;
  const file = await readEpisodeFile(id, new Date().toISOString());
  if (!file) notFound();
  return (
    <>
      <SlateHead kind="Recipe from a page" title={file.episode.title} />
      <p className="mb-6 print:hidden">
        <ButtonLink href={`/episodes/${id}`} size="small">
          Back to the episode
        </ButtonLink>{' '}
        <ButtonLink href={`/episodes/${id}/edit/draft`} size="small">
          Back to the draft from the texts
        </ButtonLink>
      </p>
      <RecipeForm episodeId={id} />
    </>
  );
}
