export interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

export const NO_DAY = 'There is no filming day here.\n';
export const NO_CLOCK =
  'The takes have no timecodes yet: say on the page After the day what a picture of the clock shows.\n';

/** A text as a file of its own. */
export function download(text: string, type: string, name: string): Response {
  return new Response(text, {
    headers: {
      'content-type': type,
      'content-disposition': `attachment; filename="${name}"`,
      'x-content-type-options': 'nosniff',
      'cache-control': 'no-store',
    },
  });
}
