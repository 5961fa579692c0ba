import 'server-only';
import { captionsAs } from '#lib/cut/captions-as';
import { chapterList, cutEndS, type Chapter } from '#lib/cut/chapters';
import type { Captions } from '#lib/cut/captions';
import { readSpoken } from '#lib/cut/spoken';
import { readEpisodeFile } from '#lib/store/read-episode';
import { download } from '../../../../download';

export interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

const NO_EPISODE = 'There is no such episode.\n';
const NO_CHAPTERS = 'No segment has a time in the cut yet, so there are no chapters.\n';
const NO_END = 'This file needs an end: say where the last segment ends in the cut.\n';
const NO_CAPTIONS = 'There are no such captions here.\n';

const refused = (words: string): Response => new Response(words, { status: 404 });

/**
 * The chapters of an episode's cut as a file.
 * @param write null where the format has no place for a list without an end
 */
export async function chaptersFile(
  { params }: Context,
  write: (chapters: readonly Chapter[], endS: number | null) => string | null,
  type: string,
  name: string,
): Promise<Response> {
  const file = await readEpisodeFile((await params).id, new Date().toISOString());
  if (!file) return refused(NO_EPISODE);
  const { chapters } = chapterList(file.episode);
  if (chapters.length === 0) return refused(NO_CHAPTERS);
  const text = write(chapters, cutEndS(file.episode));
  return text === null ? refused(NO_END) : download(text, type, name);
}

/** Captions of the edit, by the id in the address, in a format that need not be their own. */
export async function captionsFile(
  request: Request,
  { params }: Context,
  format: Captions['format'],
  type: string,
  ending: string,
): Promise<Response> {
  const at = new Date().toISOString();
  const file = await readEpisodeFile((await params).id, at, { edit: true });
  if (!file) return refused(NO_EPISODE);
  const id = new URL(request.url).searchParams.get('text');
  const text = file.edit?.texts.find((each) => each.kind === 'captions' && each.id === id);
  const read = text && readSpoken(text.text);
  const captions = read?.ok ? read.value.captions : null;
  if (!text || !captions) return refused(NO_CAPTIONS);
  const name = `captions.${ending}`;
  return download(captionsAs(captions, format).text, type, name);
}
