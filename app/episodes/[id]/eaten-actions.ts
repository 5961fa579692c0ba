'use server';

import { plateEaten, typedGrams } from '#lib/episode/plate-eaten';
import type { Ratio } from '#lib/episode/fields';
import type { Kitchen } from '#lib/episode/kitchen-schema';
import type { Ate } from '#lib/episode/schema';
import { DEFAULT_RESOLUTION_MG, plannedResolutionMg, spreadPermille } from '#lib/episode/spreads';
import { failed, ok, type Result } from '#lib/result';
import { readEpisodeFile } from '#lib/store/read-episode';
import { parseThenAct } from '../../_forms/parse-then-act';
import type { FormState } from '../../_ui/form/form-state';
import { change } from './change';
import { eatenForm, type TypedEaten } from './eaten-schema';

/** Says how much of a dish was eaten: it counts to the day. */
export async function saveEaten(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(eatenForm, state, form, async ({ episodeId, segmentId, rev, eaten }) => {
    const file = await readEpisodeFile(episodeId, new Date().toISOString());
    const segment = file?.episode.segments.find(({ id }) => id === segmentId);
    if (!file || !segment) {
      const message = 'This dish is no longer there: it was removed. Nothing was written.';
      return failed({ path: '', code: 'gone', message });
    }
    const read = eatenOf(eaten, file.kitchen);
    if (!read.ok) return read;
    const { share, ate } = read.value;
    const mass = ate.kind === 'mass' ? ate : null;
    const patch = {
      eatenNum: share.num,
      eatenDen: share.den,
      ateKind: ate.kind,
      atePermille: ate.kind === 'byEye' ? ate.permille : null,
      ateLowMg: mass?.lowMg ?? null,
      ateMg: mass?.valueMg ?? null,
      ateHighMg: mass?.highMg ?? null,
    };
    return change(episodeId, `Say how much of ${segment.title} you ate`, [
      { op: 'update', entity: 'Segment', id: segmentId, rev, patch },
    ]);
  });
}

interface Eaten {
  readonly share: Ratio;
  readonly ate: Ate;
}

const ALL: Ratio = { num: 1, den: 1 };

function eatenOf(typed: TypedEaten, kitchen: Kitchen): Result<Eaten> {
  if (typed.kind === 'share') return ok({ share: typed.share, ate: { kind: 'share' } });
  if (typed.kind === 'byEye') {
    const permille = typed.permille ?? spreadPermille(kitchen, 'portion');
    return ok({ share: typed.share, ate: { kind: 'byEye', permille } });
  }
  if (typed.kind === 'mass') {
    const mass = typedGrams(typed.mass, plannedResolutionMg(kitchen));
    return ok({ share: ALL, ate: { kind: 'mass', ...mass } });
  }
  const scale = kitchen.scales.find(({ id }) => id === typed.scaleId) ?? kitchen.scales[0];
  const resolution = scale?.resolutionMg ?? DEFAULT_RESOLUTION_MG;
  const mass = plateEaten(typed.beforeMg, typed.afterMg, resolution);
  if (mass) return ok({ share: ALL, ate: { kind: 'mass', ...mass } });
  const message = 'The plate must weigh less after than before: look at both again.';
  return failed({ path: 'after', code: 'order', message });
}
