import { searchText } from '#lib/shoot/proof-words';
import { followSearch } from '#lib/work/day-searches';
import { readDayFile, type DayContext } from '../read-day-file';

/**
 * The search for the best order as it goes on, as server-sent events (HTML Living Standard, section 9.2): each
 * `progress` is a sentence, `over` is the last.
 */
export async function GET(request: Request, context: DayContext): Promise<Response> {
  const file = await readDayFile(request, context);
  if (file instanceof Response) return file;
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
