import 'server-only';
import type { CutPoints } from '#lib/cut/cut-points';
import { plannedRuntime, type PlannedRuntime } from '#lib/cut/planned-runtime';
import { wordsPerMinute } from '#lib/cut/speaking-rate';
import type { SoughtSegment } from '#lib/cut/find-segments';
import { readSpoken, type Spoken } from '#lib/cut/spoken';
import { episodeRate, type FrameRate } from '#lib/cut/timecode';
import type { EditText } from '#lib/episode/edit-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { bindText } from '#lib/figures/bind-text';
import { episodeFigures } from '#lib/figures/episode-figures';
import { publishedNumbers } from '#lib/figures/published-numbers';
import { readRevisedEpisode } from '#lib/store/read-revised-episode';

/** Captions or a transcript of the episode, as they can be read; null where they cannot. */
export interface CaptionText {
  readonly text: EditText;
  readonly spoken: Spoken | null;
  /** Words a minute in it; null where too little is said with times. */
  readonly perMinute: number | null;
}

/** An episode's running order in its cut. */
export interface TimelineView {
  readonly file: EpisodeFile;
  readonly revs: Readonly<Record<string, number>>;
  /** Null where the episode's rate is none that timecode is written at. */
  readonly rate: FrameRate | null;
  readonly points: readonly CutPoints[];
  readonly sought: readonly SoughtSegment[];
  readonly runtime: PlannedRuntime;
  readonly captions: readonly CaptionText[];
}

/** The episode with its edit, and what forms say of its cut; null where it is not there. */
export async function readTimeline(episodeId: string): Promise<TimelineView | null> {
  const read = await readRevisedEpisode(episodeId, new Date().toISOString(), { edit: true });
  if (!read) return null;
  const { file, revs } = read;
  const { episode } = file;
  const figures = episodeFigures(file);
  const numbers = publishedNumbers(file, figures);
  const said = episode.segments.map((segment) => ({
    ...segment,
    points: segment.talkingPoints.map(({ text }) => bindText(text, segment, figures, numbers).text),
  }));
  return {
    file,
    revs,
    rate: episodeRate(episode),
    points: episode.segments.map(({ id, title, inFrame, outFrame, chapter }) => ({
      id,
      title,
      inFrame,
      outFrame,
      chapter,
    })),
    sought: said.map(({ id, title, points }) => ({ id, title, points })),
    runtime: plannedRuntime(said, episode.rate, file.creator.wordsPerMinute ?? undefined),
    captions: captionsOf(file),
  };
}

export function captionsOf(file: Pick<EpisodeFile, 'edit'>): CaptionText[] {
  const texts = file.edit?.texts.filter(({ kind }) => kind === 'captions') ?? [];
  return texts.map((text) => {
    const read = readSpoken(text.text);
    const spoken = read.ok ? read.value : null;
    return { text, spoken, perMinute: spoken && wordsPerMinute(spoken.lines) };
  });
}
