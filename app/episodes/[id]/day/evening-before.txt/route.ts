import { eveningText } from '#lib/sheet/evening-text';
import { plannedDay } from '#lib/work/day-searches';
import { readDayFile, type DayContext } from '../read-day-file';

/** The evening before the filming day as plain text. */
export async function GET(request: Request, context: DayContext): Promise<Response> {
  const file = await readDayFile(request, context);
  if (file instanceof Response) return file;
  const { plan } = await plannedDay(file, 'whole');
  return new Response(eveningText(file, plan), {
    headers: {
      'content-type': 'text/plain; charset=utf-8',
      'content-disposition': 'attachment; filename="evening-before.txt"',
      'cache-control': 'no-store',
    },
  });
}
