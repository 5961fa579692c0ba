import { daySheetCsv } from '#lib/shoot/day-sheet-csv';
import { plannedDay } from '#lib/work/day-searches';
import { readDayFile, type DayContext } from '../read-day-file';

/** Spreadsheets that would take the file for one in the system's own letters are told that it is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF';

/** The shooting order as a table for spreadsheets. */
export async function GET(request: Request, context: DayContext): Promise<Response> {
  const file = await readDayFile(request, context);
  if (file instanceof Response) return file;
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
