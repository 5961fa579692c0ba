import { takesCsv } from '#lib/cut/take-marks';
import { dayOfRequest } from '../../asked-day';
import { readAfter } from '../read-after';
import { download } from '../../../../../download';
import { NO_DAY, type Context } from '../takes';

/** Spreadsheets that would take the file for one in the system's own letters are told that it is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF';

/** The takes of the day as a table for spreadsheets. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const after = await readAfter((await params).id, dayOfRequest(request));
  if (!after) return new Response(NO_DAY, { status: 404 });
  const text = BYTE_ORDER_MARK + takesCsv(after.marks ?? after.takes);
  return download(text, 'text/csv; charset=utf-8; header=present', 'takes.csv');
}
