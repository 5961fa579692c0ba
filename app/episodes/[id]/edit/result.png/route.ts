import { editPicture, type PictureBeam } from '#lib/publish/edit-picture';
import { readEpisodeFile } from '#lib/store/read-episode';
import { localDate } from '#lib/units/local-date';
import { printDay } from '#lib/units/print-date';
import { svgToPng } from '#lib/work/svg-to-png';
import { editStanding } from '#lib/overview/edit-standing';
import { balance, type BalanceState } from '../../../../_ui/geometry';
import { DAY } from '../../../../_ui/palette';
import { readEditFacts } from '../../edit-facts';
import { fileName } from '../../export/file-name';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The result of the edit as one picture. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const now = new Date();
  const file = await readEpisodeFile((await params).id, now.toISOString(), { edit: true });
  if (!file) return new Response('There is no such episode.\n', { status: 404 });
  const { counts, rows, contradictions, named } = editStanding(file, await readEditFacts(file));
  const result = {
    title: file.episode.title,
    on: printDay(localDate(now, file.kitchen.zone)),
    counts,
    off: rows.filter(({ standing }) => standing === 'off'),
    contradictions: contradictions.length,
    named: named.filter(({ answer }) => answer === null).length,
  };
  const beams = {
    off: beam('off'),
    edge: beam('edge'),
    agrees: beam('agrees'),
    unknown: beam('unknown'),
  };
  const picture = svgToPng(editPicture(result, { ...DAY, chalkSoft: DAY['chalk-soft'] }, beams));
  return new Response(new Uint8Array(picture), {
    headers: {
      'content-type': 'image/png',
      'content-disposition': `attachment; filename="${fileName(file.episode.title, 'edit.png')}"`,
      'cache-control': 'no-store',
    },
  });
}

function beam(verdict: BalanceState): PictureBeam {
  const { left, right, rightPan } = balance(verdict, 'said');
  const pan = ({ x, y }: { readonly x: number; readonly y: number }) => `M${x} ${y}l-6 10h12z`;
  const post = `M24 29V9M17 29h14M${left.x} ${left.y}L${right.x} ${right.y}${pan(left)}`;
  return rightPan
    ? { strokes: post + pan(right), dotted: 'M0 0' }
    : { strokes: post, dotted: pan(right) };
}
