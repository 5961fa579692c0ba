import { LARGEST_PHOTO, tooLargeWords } from '#lib/foods/photo-kinds';
import type { Result } from '#lib/result';
import { answer, faults } from './answers';

/** The bytes of a request; null where they are more than a photo may have, and not read to their end then. */
async function readPhotoBytes(request: Request): Promise<Uint8Array | null> {
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

/** Takes the bytes of a photo that an entry names by this hash. */
export async function takePhoto(
  request: Request,
  sha256: string,
  keep: (bytes: Uint8Array) => Promise<Result<string>>,
): Promise<Response> {
  const bytes = await readPhotoBytes(request);
  if (bytes === null) {
    const message = tooLargeWords(LARGEST_PHOTO + 1);
    return faults(413, [{ path: '', code: 'too-long', message }]);
  }
  const kept = await keep(bytes);
  if (kept.ok) return answer({ sha256 });
  return faults(kept.problems[0]?.code === 'not-named' ? 404 : 400, kept.problems);
}

/** A photo as it is shown; its address holds its hash, so it never changes. */
export function photoAnswer(
  photo: { readonly bytes: Uint8Array; readonly mime: string } | null,
): Response {
  if (!photo) {
    const message = 'This photo is not here, or not yet.';
    return faults(404, [{ path: 'sha256', code: 'gone', message }]);
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
