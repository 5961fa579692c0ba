/**
 * A text or picture as a file of its own.
 * @param name as it is saved, in plain letters
 */
export function download(body: BodyInit, type: string, name: string): Response {
  return new Response(body, {
    headers: {
      'content-type': type,
      'content-disposition': `attachment; filename="${name}"`,
      'x-content-type-options': 'nosniff',
      'cache-control': 'no-store',
    },
  });
}
