import { dishesOf } from '#lib/episode/context';
import type { Reply } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { localMoment } from '#lib/units/local-date';
import { printTo } from '#lib/units/print';

/** A kept reply as a list shows it. */
export interface ReplyRow {
  readonly id: string;
  /** 'Sat 12 Dec, 18:02'. */
  readonly at: string;
  readonly comment: string;
  /** '712 kcal, Skillet'; empty where nothing was read. */
  readonly about: string;
  readonly text: string;
}

/** As many as can be looked over on a page. */
const PAGE = 20;

/** One page of kept replies, the latest first. */
export function replyRows(
  file: EpisodeFile,
  replies: readonly Reply[],
  page: number,
): { readonly rows: readonly ReplyRow[]; readonly pages: number; readonly page: number } {
  const pages = Math.max(1, Math.ceil(replies.length / PAGE));
  const at = Math.min(Math.max(1, page), pages);
  const titles = new Map(dishesOf(file.episode.segments).map(({ id, title }) => [id, title]));
  const latest = [...replies].sort((a, b) =>
    a.at < b.at ? 1 : a.at > b.at ? -1 : a.id < b.id ? 1 : -1,
  );
  const rows = latest.slice((at - 1) * PAGE, at * PAGE).map((reply): ReplyRow => {
    const { id, comment, nutrient, number, segmentId, text } = reply;
    const amount =
      nutrient !== null && number !== null
        ? `${printTo(number, Number.isInteger(number) ? 1 : 0.1)} ${NUTRIENTS[nutrient].unit} ${nutrient === 'energyKcal' || nutrient === 'energyKj' ? '' : NUTRIENTS[nutrient].label}`.trim()
        : '';
    const about = [amount, titles.get(segmentId ?? '') ?? ''].filter(Boolean).join(', ');
    return { id, at: localMoment(new Date(reply.at), file.kitchen.zone), comment, about, text };
  });
  return { rows, pages, page: at };
}
