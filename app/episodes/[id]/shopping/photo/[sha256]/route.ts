import { LARGEST_PHOTO, tooLargeWords } from '#lib/foods/photo-kinds';
import type { Problem } from '#lib/result';
import { keepLabelPhoto, readLabelPhoto } from '#lib/store/photos-of-lists';
import { photoAnswer, readPhotoBytes } from '../../../../../_sync/photo-answers';
import { queryOf } from '../../load-list';
import { askedList } from '../../scope';

interface Context {
  readonly params: Promise<{ readonly id: string; readonly sha256: string }>;
}

const answer = (body: unknown, status: number): Response =>
  Response.json(body, { status, headers: { 'cache-control': 'no-store' } });
const faults = (status: number, ...problems: readonly Problem[]): Response =>
  answer({ problems }, status);

/** Takes the bytes of a photo that an entry of the list names by this hash. */
export async function PUT(request: Request, { params }: Context): Promise<Response> {
  const { id, sha256 } = await params;
  const bytes = await readPhotoBytes(request);
  if (bytes === null) {
    const message = tooLargeWords(LARGEST_PHOTO + 1);
    return faults(413, { path: '', code: 'too-long', message });
  }
  const kept = await keepLabelPhoto(askedList(id, queryOf(request)).scope, sha256, bytes);
  if (kept.ok) return answer({ sha256 }, 200);
  return faults(kept.problems[0]?.code === 'not-named' ? 404 : 400, ...kept.problems);
}

/** A photo of a label from the shop. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { id, sha256 } = await params;
  const photo = await readLabelPhoto(askedList(id, queryOf(request)).scope, sha256);
  if (photo) return photoAnswer(photo);
  const message = 'This photo is not here, or not yet.';
  return faults(404, { path: 'sha256', code: 'gone', message });
}
