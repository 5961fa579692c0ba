import { shownAs } from '#lib/foods/photo-name';
import { readPhoto } from '#lib/store/photos-of-foods';

interface Context {
  readonly params: Promise<{ readonly foodId: string; readonly sha256: string }>;
}

/**
 * A photo of a label, as the kind that its bytes were recognised as and no other. Whatever a browser took it
 * for, it may run nothing and fetch nothing; its address holds its hash, so it never changes.
 */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const { foodId, sha256 } = await params;
  const photo = await readPhoto(foodId, sha256);
  if (photo === null) return missing('This food has no such photo.');
  if (photo.bytes === null) {
    return missing('The file of this photo is missing or damaged. A backup may have it.');
  }
  return new Response(photo.bytes, {
    headers: {
      'content-type': photo.mime,
      'content-disposition': shownAs(photo.name),
      'cache-control': 'private, max-age=31536000, immutable',
      'x-content-type-options': 'nosniff',
      // Styles are those that a browser gives its own page around a picture.
      'content-security-policy': "sandbox; default-src 'none'; style-src 'unsafe-inline'",
      'cross-origin-resource-policy': 'same-origin',
    },
  });
}

function missing(words: string): Response {
  const headers = {
    'content-type': 'text/plain; charset=utf-8',
    'cache-control': 'no-store',
    'x-content-type-options': 'nosniff',
  };
  return new Response(`${words}\n`, { status: 404, headers });
}
