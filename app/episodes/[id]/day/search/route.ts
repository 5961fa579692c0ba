import { searchText } from '#lib/shoot/proof-words';
import { readEpisodeFile } from '#lib/store/read-episode';
import { dayOfRequest } from '../asked-day';
import { followSearch } from '#lib/work/day-searches';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/**
 * The search for the best order as it goes on, as server-sent events (HTML Living Standard, section 9.2): each
 * `progress` is a sentence, `over` is the last.
 */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const file = await readEpisodeFile((await params).id, new Date().toISOString(), {
    dayId: dayOfRequest(request),
  });
  if (!file?.day) return new Response('There is no filming day here.\n', { status: 404 });
  const encoder = new TextEncoder();
  let leave = (): void => undefined;
  const body = new ReadableStream<Uint8Array>({
    start(controller) {
      const send = (event: string, data: string): void =>
        controller.enqueue(encoder.encode(`event: ${event}\ndata: ${data}\n\n`));
      leave = followSearch(file, ({ progress, over }) => {
        send('progress', searchText(progress));
        if (!over) return;
        send('over', '');
        controller.close();
      });
      request.signal.addEventListener('abort', () => leave());
    },
    cancel: () => leave(),
  });
  return new Response(body, {
    headers: { 'content-type': 'text/event-stream; charset=utf-8', 'cache-control': 'no-store' },
  });
}
