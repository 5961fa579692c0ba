import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { episodeFigures } from '#lib/figures/episode-figures';
import { ENERGY_STEPS } from '#lib/episode/schema';
import { publishedNumbers } from '#lib/figures/published-numbers';
import { countedNutrients } from '#lib/figures/shown-nutrients';
import { saidStandings } from '#lib/overview/said-standing';
import { toldLock } from '#lib/publish/lock-words';
import { readRevisions } from '#lib/store/read-episode';
import { othersOf } from '../others';
import { readDescription } from '../publish/read-description';
import { NumbersView } from './_components/numbers-view';

export const metadata: Metadata = { title: 'Numbers' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly step?: string | readonly string[] }>;
}

export default async function NumbersPage({ params, searchParams }: Props) {
  const { id } = await params;
  const { step } = await searchParams;
  // First, so that what changes meanwhile is a conflict and never overwritten.
  const revs = await readRevisions(id);
  const read = await readDescription(id, new Date());
  if (!read) notFound();
  const { file } = read;
  // Whoever asks for net carbohydrate finds it here; what is copied has it only where a target or sentence does.
  const nutrients = new Set([...countedNutrients(file.episode), 'netCarbohydrate' as const]);
  const figures = episodeFigures(file, [...nutrients]);
  return (
    <NumbersView
      view={{
        file,
        figures,
        numbers: publishedNumbers(file, figures),
        revs,
        others: await othersOf(file),
        editing: null,
      }}
      description={read.describe({ form: 'plain', without: [] })}
      lock={toldLock(read.publish)}
      said={saidStandings(file, figures)}
      energyStep={ENERGY_STEPS.find((each) => String(each) === step)}
    />
  );
}
