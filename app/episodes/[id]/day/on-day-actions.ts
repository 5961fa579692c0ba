'use server';

import type { Segment } from '#lib/episode/schema';
import { failed } from '#lib/result';
import { FILMED_WORDS } from '#lib/shoot/step-words';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import type { Edit } from '#lib/store/command';
import { onDayRow } from './_components/view';
import { changeAndClose, fieldOf, GONE, readDay } from './change';
import { onDayForm } from './on-day-schema';

/** What of a segment is done on its day, when it is filmed and what becomes of its food, in one act. */
export async function saveOnDay(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    onDayForm,
    state,
    form,
    async ({ episodeId, segmentId, placeId, rev, part, fate, filmedWhen, wasFilmedWhen }) => {
      const read = await readDay(episodeId);
      const segment = read?.file.episode.segments.find(({ id }) => id === segmentId);
      const place = read?.file.day?.segments.find(({ id }) => id === placeId);
      if (!read || !segment || place?.segmentId !== segmentId) return GONE;
      const edits: Edit[] = [
        { op: 'update', entity: 'DaySegment', id: placeId, rev, patch: { part, fate } },
      ];
      if (filmedWhen !== wasFilmedWhen) {
        if (segment.filmedWhen !== wasFilmedWhen) return changedElsewhere(segment.filmedWhen);
        const [patch, segmentRev] = [{ filmedWhen }, read.revs[segmentId] ?? 0];
        edits.push({ op: 'update', entity: 'Segment', id: segmentId, rev: segmentRev, patch });
      }
      const label = `Change ${segment.title} on its day`;
      return changeAndClose(episodeId, onDayRow(segmentId), label, edits);
    },
    fieldOf,
  );
}

function changedElsewhere(now: Segment['filmedWhen']) {
  const stands = now === null ? 'whenever it fits' : FILMED_WORDS[now];
  const message = `This was changed elsewhere since you opened it, and nothing was overwritten: “${stands}”. Open it anew to change it.`;
  return failed({ path: 'filmedWhen', code: 'conflict', message });
}
