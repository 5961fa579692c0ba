import { LARGEST_PHOTO } from '#lib/foods/photo-kinds';

/** The bytes of a request; null where they are more than a photo may have, and not read to their end then. */
export async function readPhotoBytes(request: Request): Promise<Uint8Array | null> {
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

/** A photo as it is shown; its address holds its hash, so it never changes. */
export function photoAnswer(photo: {
  readonly bytes: Uint8Array;
  readonly mime: string;
}): Response {
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
