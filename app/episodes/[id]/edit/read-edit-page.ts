import 'server-only';
import { createHash } from 'node:crypto';
import { editStanding, type EditStanding } from '#lib/overview/edit-standing';
import { madeOf } from '#lib/overview/made-of';
import { textStanding } from '#lib/overview/text-standing';
import { readRevisedEpisode } from '#lib/store/read-revised-episode';
import { readEditFacts } from '../edit-facts';
import { lastAct } from '../last-act';
import { linkOf } from './link-of';
import { aboutChoices } from './about-choices';
import { textSlots } from './text-slots';
import type { EditPage } from './_components/view';

/**
 * Reads the texts of an episode's edit and holds all that they say against its numbers; null where there is no such
 * episode.
 */
export async function readEditPage(id: string, at: string | null): Promise<EditPage | null> {
  const read = await readRevisedEpisode(id, new Date().toISOString(), { edit: true });
  if (!read) return null;
  const { file, revs } = read;
  const { texts: placed, rows, ...standing } = editStanding(file, await readEditFacts(file));
  const texts = file.edit?.texts ?? [];
  const slots = await textSlots(texts.map((text) => text.id));
  return {
    ...standing,
    rows: rows.map((row) => ({
      ...row,
      link: linkOf(id, row),
      mendRev: revs[row.mend?.id ?? ''] ?? 0,
    })),
    episodeId: id,
    title: file.episode.title,
    texts: texts.map(({ text, ...row }, place) => ({
      ...row,
      slot: slots[place] ?? row.id,
      ...textStanding({ kind: row.kind, text }),
      rev: revs[row.id] ?? 0,
    })),
    made: madeOf(file.episode),
    abouts: aboutChoices(file.episode.segments),
    revs,
    last: await lastAct(file),
    version: versionOf(placed),
    at,
  };
}

function versionOf(texts: EditStanding['texts']): string {
  const hash = createHash('sha256');
  for (const { said, text } of texts) hash.update(`${said.id}\n${said.name}\n${text}\n`);
  return hash.digest('hex').slice(0, 16);
}
