import { readPhoto, type Photo } from '#lib/foods/photo';
import { LARGEST_PHOTO, tooLargeWords } from '#lib/foods/photo-kinds';
import { failed, ok, type Failed, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { photoEdit } from '#lib/store/photos-of-foods';
import { FILE_FIELDS } from './file-fields';

/** A photo as it came with a form: what its bytes are, its name there, and the field that it was in. */
interface SentPhoto {
  readonly photo: Photo;
  readonly name: string;
  readonly field: string;
}

/** Reads the photo that a form brings; null where it brings none. A fault is told at its field. */
async function sentPhoto(form: FormData): Promise<Result<SentPhoto | null>> {
  const sent = FILE_FIELDS.map((field) => ({ field, file: form.get(field) })).flatMap(
    ({ field, file }) => (file instanceof File && file.size > 0 ? [{ field, file }] : []),
  );
  const [first] = sent;
  if (!first) return ok(null);
  const { field, file } = first;
  const refused = (code: string, message: string) => failed({ path: field, code, message });
  if (sent.length > 1) return refused('two-files', 'Choose one of the two photos.');
  if (file.size > LARGEST_PHOTO) return refused('too-large', tooLargeWords(file.size));
  const photo = readPhoto(new Uint8Array(await file.arrayBuffer()));
  return photo.ok ? ok({ photo: photo.value, name: file.name, field }) : at(field, photo);
}

/**
 * The edits that attach the photo of a form to a reading; null where the form brings none. There are no edits
 * where the reading has this photo already and only its file was missing.
 */
export async function photoEdits(
  form: FormData,
  versionId: string,
): Promise<Result<readonly Edit[] | null>> {
  const sent = await sentPhoto(form);
  if (!sent.ok) return sent;
  if (sent.value === null) return ok(null);
  const { photo, name, field } = sent.value;
  const edit = await photoEdit(versionId, photo, name);
  if (!edit.ok) return at(field, edit);
  return ok(edit.value ? [edit.value] : []);
}

/** A refusal at the field that the photo was in. */
function at(field: string, { problems }: Failed): Failed {
  return failed(...problems.map((problem) => ({ ...problem, path: field })));
}
