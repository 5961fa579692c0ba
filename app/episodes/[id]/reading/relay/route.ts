import { readEpisodeFile } from '#lib/store/read-episode';
import { answer, sentOr } from '../../../../_sync/answers';
import { relayMessage, type RelayMessage } from '../_relay/message';
import { relay } from '../_relay/relay';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** A line without meaning, so that nobody between takes the stream for dead. */
const STILL_HERE_MS = 20_000;

/** What devices of this reading tell each other, as server-sent events (HTML Living Standard, section 9.2). */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { id } = await params;
  if (!(await readEpisodeFile(id, new Date().toISOString())))
    return new Response('There is no such episode.\n', { status: 404 });
  const encoder = new TextEncoder();
  let leave: (() => void) | null = null;
  let timer: ReturnType<typeof setInterval> | null = null;
  const end = () => {
    if (timer !== null) clearInterval(timer);
    leave?.();
    [timer, leave] = [null, null];
  };
  const body = new ReadableStream<Uint8Array>({
    start(controller) {
      const send = (text: string) => controller.enqueue(encoder.encode(text));
      const tell = (message: RelayMessage) => send(`data: ${JSON.stringify(message)}\n\n`);
      send(': here\n\n');
      leave = relay.listen(id, tell);
      if (leave === null) {
        send('event: full\ndata:\n\n');
        controller.close();
        return;
      }
      timer = setInterval(() => send(': still here\n\n'), STILL_HERE_MS);
      request.signal.addEventListener('abort', end);
    },
    cancel: end,
  });
  return new Response(body, {
    headers: { 'content-type': 'text/event-stream; charset=utf-8', 'cache-control': 'no-store' },
  });
}

/** Passes one message on. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const read = await sentOr(request, relayMessage);
  if ('refusal' in read) return read.refusal;
  relay.tell((await params).id, read.sent);
  return answer({});
}
