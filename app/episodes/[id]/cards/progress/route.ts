import { followZip } from '../zip-progress';

/** How far a zip is, as server-sent events (HTML Living Standard, section 9.2): `progress` has numbers, `over` is the last. */
export function GET(request: Request): Response {
  const name = new URL(request.url).searchParams.get('job');
  const encoder = new TextEncoder();
  let leave: (() => void) | null = null;
  let open = true;
  const body = new ReadableStream<Uint8Array>({
    start(controller) {
      const send = (event: string, data: string): void => {
        if (open) controller.enqueue(encoder.encode(`event: ${event}\ndata: ${data}\n\n`));
      };
      const close = (): void => {
        if (open) controller.close();
        open = false;
        leave?.();
      };
      leave = followZip(name, (progress) => {
        send('progress', JSON.stringify(progress));
        if (!progress.over) return;
        send('over', '');
        // The list of listeners is being walked: it is left behind it.
        queueMicrotask(close);
      });
      if (leave === null) close();
      request.signal.addEventListener('abort', close);
    },
    cancel: () => {
      open = false;
      leave?.();
    },
  });
  return new Response(body, {
    headers: { 'content-type': 'text/event-stream; charset=utf-8', 'cache-control': 'no-store' },
  });
}
