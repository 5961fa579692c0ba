import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { episodeFigures } from '#lib/figures/episode-figures';
import { publishedNumbers } from '#lib/figures/published-numbers';
import { lockStanding } from '#lib/lock/lock-standing';
import { plannedLengthS, stageFacts } from '#lib/overview/episode-facts';
import { stageOf } from '#lib/overview/stage';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readRevisedEpisode } from '#lib/store/read-revised-episode';
import { readLastLock, readPublished } from '#lib/store/read-locks';
import { localDate } from '#lib/units/local-date';
import { lastAct } from './last-act';
import { keptTyping } from './kept-typing';
import { othersOf } from './others';
import { againOf } from './again';
import { dishesView } from './dishes';
import { statesWays } from './states-ways';
import { EpisodeView } from './_components/episode-view';

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{
    readonly edit?: string | string[];
    readonly again?: string | string[];
    readonly look?: string | string[];
    readonly copied?: string | string[];
    readonly kept?: string | string[];
    readonly paste?: string | string[];
    readonly to?: string | string[];
  }>;
}

/** Letters of a search at most, as the search itself takes them. */
const LONGEST_LOOK = 200;

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const file = await readEpisodeFile((await params).id, new Date().toISOString());
  return { title: file?.episode.title ?? 'No such episode' };
}

export default async function EpisodePage({ params, searchParams }: Props) {
  const { id } = await params;
  const asked = await searchParams;
  const { edit, kept } = asked;
  const editing = typeof edit === 'string' ? edit : null;
  const now = new Date();
  const read = await readRevisedEpisode(id, now.toISOString());
  if (!read) notFound();
  const { file, revs } = read;
  const figures = episodeFigures(file);
  const lock = await readLastLock(id);
  const copied = (await readPublished(id)) !== null;
  return (
    <EpisodeView
      view={{
        file,
        figures,
        numbers: publishedNumbers(file, figures),
        revs,
        others: await othersOf(file),
        dishes: await dishesView(file),
        states: await statesWays(file),
        paste: pasteOf(one(asked.to), one(asked.paste)),
        look: one(asked.look)?.slice(0, LONGEST_LOOK) ?? null,
        again: await againOf(file, { copied: one(asked.copied), words: one(asked.again) }),
        editing,
        kept: editing === null ? null : await keptTyping(file, editing, kept === 'use'),
      }}
      stage={stageOf(stageFacts(file, copied), localDate(now, file.kitchen.zone))}
      numbers={lockStanding(lock?.snapshot ?? null, file)}
      last={await lastAct(file)}
      totalS={plannedLengthS(file.episode.segments)}
    />
  );
}

/** What the form of a dish by which ingredients are pasted begins with. */
function pasteOf(segmentId: string | null, words: string | null) {
  if (segmentId === null || words === null) return null;
  return { segmentId, words: words.slice(0, LONGEST_LOOK) };
}

/** A word of the address that is given once. */
function one(given: string | string[] | undefined): string | null {
  return typeof given === 'string' ? given : null;
}
