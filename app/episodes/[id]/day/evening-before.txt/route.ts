import { eveningText } from '#lib/sheet/evening-text';
import { readEpisodeFile } from '#lib/store/read-episode';
import { dayOfRequest } from '../asked-day';
import { plannedDay } from '#lib/work/day-searches';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The evening before the filming day as plain text. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const file = await readEpisodeFile((await params).id, new Date().toISOString(), {
    dayId: dayOfRequest(request),
  });
  if (!file?.day) return new Response('There is no filming day here.\n', { status: 404 });
  const { plan } = await plannedDay(file, 'whole');
  return new Response(eveningText(file, plan), {
    headers: {
      'content-type': 'text/plain; charset=utf-8',
      'content-disposition': 'attachment; filename="evening-before.txt"',
      'cache-control': 'no-store',
    },
  });
}
