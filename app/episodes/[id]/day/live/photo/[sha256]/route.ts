import { LARGEST_PHOTO, tooLargeWords } from '#lib/foods/photo-kinds';
import type { Problem } from '#lib/result';
import { GONE_DAY } from '#lib/store/day-events';
import { keepDisplayPhoto, readDisplayPhoto } from '#lib/store/photos-of-days';
import { isDayOf } from '#lib/store/read-day-events';
import { photoAnswer, readPhotoBytes } from '../../../../../../_sync/photo-answers';

interface Context {
  readonly params: Promise<{ readonly id: string; readonly sha256: string }>;
}

const answer = (body: unknown, status: number): Response =>
  Response.json(body, { status, headers: { 'cache-control': 'no-store' } });
const faults = (status: number, ...problems: readonly Problem[]): Response =>
  answer({ problems }, status);

/** The day that the address asks about, if it is one of the episode's; null if not. */
async function dayOf(request: Request, id: string): Promise<string | null> {
  const day = new URL(request.url).searchParams.get('day') ?? '';
  return (await isDayOf(id, day)) ? day : null;
}

/** Takes the bytes of a photo that an entry of the day names by this hash. */
export async function PUT(request: Request, { params }: Context): Promise<Response> {
  const { id, sha256 } = await params;
  const day = await dayOf(request, id);
  if (day === null) return faults(404, { path: 'day', code: 'gone', message: GONE_DAY });
  const bytes = await readPhotoBytes(request);
  if (bytes === null) {
    const message = tooLargeWords(LARGEST_PHOTO + 1);
    return faults(413, { path: '', code: 'too-long', message });
  }
  const kept = await keepDisplayPhoto(day, sha256, bytes);
  if (kept.ok) return answer({ sha256 }, 200);
  return faults(kept.problems[0]?.code === 'not-named' ? 404 : 400, ...kept.problems);
}

/** A photo of a scale's display; its address holds its hash, so it never changes. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { id, sha256 } = await params;
  const day = await dayOf(request, id);
  const photo = day && (await readDisplayPhoto(day, sha256));
  if (!photo) {
    const message = 'This photo is not here, or not yet.';
    return faults(404, { path: 'sha256', code: 'gone', message });
  }
  return photoAnswer(photo);
}
