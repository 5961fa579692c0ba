import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { episodeFigures } from '#lib/figures/episode-figures';
import { ENERGY_STEPS } from '#lib/episode/schema';
import { publishedNumbers } from '#lib/figures/published-numbers';
import { countedNutrients } from '#lib/figures/shown-nutrients';
import { saidStandings } from '#lib/overview/said-standing';
import { description } from '#lib/publish/description';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { othersOf } from '../others';
import { NumbersView } from './_components/numbers-view';

export const metadata: Metadata = { title: 'Numbers' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly step?: string | readonly string[] }>;
}

export default async function NumbersPage({ params, searchParams }: Props) {
  const { id } = await params;
  const { step } = await searchParams;
  const file = await readEpisodeFile(id, new Date().toISOString());
  if (!file) notFound();
  // Whoever asks for net carbohydrate finds it here; what is copied has it only where a target or sentence does.
  const nutrients = new Set([...countedNutrients(file.episode), 'netCarbohydrate' as const]);
  const figures = episodeFigures(file, [...nutrients]);
  return (
    <NumbersView
      view={{
        file,
        figures,
        numbers: publishedNumbers(file, figures),
        revs: await readRevisions(id),
        others: await othersOf(file),
        editing: null,
      }}
      description={description(file)}
      said={saidStandings(file, figures)}
      energyStep={ENERGY_STEPS.find((each) => String(each) === step)}
    />
  );
}
