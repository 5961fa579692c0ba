import { daySheetCsv } from '#lib/shoot/day-sheet-csv';
import { readEpisodeFile } from '#lib/store/read-episode';
import { dayOfRequest } from '../asked-day';
import { plannedDay } from '#lib/work/day-searches';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** Spreadsheets that would take the file for one in the system's own letters are told that it is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF';

/** The shooting order as a table for spreadsheets. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const file = await readEpisodeFile((await params).id, new Date().toISOString(), {
    dayId: dayOfRequest(request),
  });
  if (!file?.day) return new Response('There is no filming day here.\n', { status: 404 });
  const { plan } = await plannedDay(file, 'whole');
  return new Response(BYTE_ORDER_MARK + daySheetCsv(file, plan), {
    headers: {
      'content-type': 'text/csv; charset=utf-8; header=present',
      'content-disposition': 'attachment; filename="day-sheet.csv"',
      'x-content-type-options': 'nosniff',
      'cache-control': 'no-store',
    },
  });
}
