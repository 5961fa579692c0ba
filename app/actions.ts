'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { v7 as uuid } from 'uuid';
import { parseEpisodeFile } from '#lib/episode/file';
import { failed, type Problem, type Result } from '#lib/result';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { importBundle } from '#lib/store/import-bundle';
import { importEpisodeFile } from '#lib/store/import-file';
import { pastedLineEdits } from '#lib/store/pasted-lines';
import { lastRegion, shortEpisodeEdits } from '#lib/store/short-episode';
import { write } from '#lib/store/write';
import { isZip, withUploadedBundle } from '#lib/work/bundle/uploaded-bundle';
import { parseThenAct } from './_forms/parse-then-act';
import type { FormState } from './_ui/form/form-state';
import { bringInForm, LARGEST_BUNDLE, LARGEST_FILE, newEpisodeForm, shortWayForm } from './schema';

/** Faults of a file that are told at once; the rest are counted. */
const TOLD = 40;

export async function newEpisode(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(newEpisodeForm, state, form, async (texts) => {
    const id = uuid();
    const written = await write({
      actor: DEFAULT_CREATOR_ID,
      label: `Begin ${texts.title}`,
      at: new Date(),
      edits: [
        {
          op: 'create',
          entity: 'Episode',
          row: {
            ...texts,
            id,
            hook: '',
            rateNum: 25,
            rateDen: 1,
            anythingElseKind: null,
            anythingElseWhat: null,
            disclosure: '',
            kitchenId: null,
          },
        },
      ],
    });
    return written.ok ? open(id) : written;
  });
}

/** The short way: one dish and its numbers from its ingredients alone. It is an episode from the first. */
export async function beginShort(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(shortWayForm, state, form, async ({ title, list, portions }) => {
    const [episodeId, recipeId] = [uuid(), uuid()];
    const lines = await pastedLineEdits(list, { recipeId, position: 0, present: 0 });
    if (!lines.ok) return lines;
    const name = title || 'A dish without a name';
    const region = await lastRegion();
    const written = await write({
      actor: DEFAULT_CREATOR_ID,
      label: `Begin ${name}`,
      at: new Date(),
      edits: shortEpisodeEdits({
        episodeId,
        recipeId,
        title: name,
        region,
        portions,
        lines: lines.value,
      }),
    });
    if (!written.ok) return written;
    revalidatePath('/');
    redirect(`/episodes/${episodeId}/numbers`);
  });
}

export async function bringIn(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    bringInForm,
    state,
    form,
    async () => {
      const file = form.get('file');
      if (!(file instanceof File) || file.size === 0) return refused('Choose an episode file.');
      if (await isZip(file)) return bringInBundle(file);
      if (file.size > LARGEST_FILE) {
        return refused('This is no episode file: it holds more than 20 MB.');
      }
      const parsed = parseEpisodeFile(await file.text());
      if (!parsed.ok) return withPlaces(parsed.problems);
      const brought = await importEpisodeFile(parsed.value, new Date());
      return brought.ok ? open(brought.value.episodeId) : withPlaces(brought.problems);
    },
    () => 'file',
  );
}

/** All of an episode. Where its locks could be kept as history alone, the page that says so is shown. */
async function bringInBundle(file: File): Promise<Result<string>> {
  if (file.size > LARGEST_BUNDLE) {
    return refused(`This zip holds more than ${String(LARGEST_BUNDLE / 1e6)} MB.`);
  }
  const brought = await withUploadedBundle(file, async (bundle) => {
    const done = await importBundle(bundle, new Date());
    const locks = bundle.history.locks.length;
    return done.ok ? { ok: true, value: { ...done.value, locks } } : done;
  });
  if (!brought.ok) return withPlaces(brought.problems);
  const { episodeId, kept, locks } = brought.value;
  if (kept || locks === 0) return open(episodeId);
  revalidatePath('/');
  return redirect(`/episodes/${episodeId}/corrections`);
}

function open(episodeId: string): never {
  revalidatePath('/');
  redirect(`/episodes/${episodeId}`);
}

function refused(message: string): Result<string> {
  return failed({ path: 'file', code: 'no-file', message });
}

/** Each fault with its place in the file, since the form has one field for all of them. */
function withPlaces(problems: readonly Problem[]): Result<string> {
  const told = problems.slice(0, TOLD).map((problem) => ({
    ...problem,
    message: problem.path ? `${problem.path}: ${problem.message}` : problem.message,
  }));
  if (problems.length <= TOLD) return failed(...told);
  const message = `And more: ${problems.length} faults in all.`;
  return failed(...told, { path: 'file', code: 'more', message });
}
