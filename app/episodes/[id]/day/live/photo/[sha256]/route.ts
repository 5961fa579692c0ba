import { LARGEST_PHOTO, tooLargeWords } from '#lib/foods/photo-kinds';
import type { Problem } from '#lib/result';
import { GONE_DAY } from '#lib/store/day-events';
import { keepDisplayPhoto, readDisplayPhoto } from '#lib/store/photos-of-days';
import { isDayOf } from '#lib/store/read-day-events';

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
  const bytes = await readBytes(request);
  if (bytes === null) {
    const message = tooLargeWords(LARGEST_PHOTO + 1);
    return faults(413, { path: '', code: 'too-long', message });
  }
  const kept = await keepDisplayPhoto(day, sha256, bytes);
  if (kept.ok) return answer({ sha256 }, 200);
  return faults(kept.problems[0]?.code === 'not-named' ? 404 : 400, ...kept.problems);
}

/** The bytes of a request; null where they are more than a photo may have, and not read to their end then. */
async function readBytes(request: Request): Promise<Uint8Array | null> {
  if (Number(request.headers.get('content-length') ?? 0) > LARGEST_PHOTO) return null;
  const reader = request.body?.getReader();
  if (!reader) return new Uint8Array();
  const parts: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.byteLength;
    if (length > LARGEST_PHOTO) {
      await reader.cancel();
      return null;
    }
    parts.push(value);
  }
  return new Uint8Array(Buffer.concat(parts));
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
  return new Response(photo.bytes as Uint8Array<ArrayBuffer>, {
    headers: {
      'content-type': photo.mime,
      'content-disposition': 'inline',
      'cache-control': 'private, max-age=31536000, immutable',
      'x-content-type-options': 'nosniff',
      'content-security-policy': "sandbox; default-src 'none'; style-src 'unsafe-inline'",
      'cross-origin-resource-policy': 'same-origin',
    },
  });
}
