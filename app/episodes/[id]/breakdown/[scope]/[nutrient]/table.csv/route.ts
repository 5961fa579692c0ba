import { breakdownCsv } from '#lib/figures/breakdown-csv';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { fileName } from '../../../../export/file-name';
import { readBreakdown, type BreakdownAddress } from '../../../read-breakdown';

interface Context {
  readonly params: Promise<BreakdownAddress>;
}

/** Spreadsheets that would take the file for one in the system's own letters are told that it is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF';

/** The breakdown as a table for spreadsheets. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const found = await readBreakdown(await params);
  if (!found) return new Response('There is no such number here.\n', { status: 404 });
  const { named, of } = found;
  const name = fileName(`${named.title} ${named.part} ${NUTRIENTS[of.nutrient].label}`, 'csv');
  return new Response(BYTE_ORDER_MARK + breakdownCsv(of, `${named.title}, ${named.part}`), {
    headers: {
      'content-type': 'text/csv; charset=utf-8; header=present',
      'content-disposition': `attachment; filename="${name}"`,
      'x-content-type-options': 'nosniff',
      'cache-control': 'no-store',
    },
  });
}
