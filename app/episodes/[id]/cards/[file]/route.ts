import { drawn } from '#lib/work/drawings';
import { overFootage } from '#lib/publish/cards/footage';
import { THUMBNAIL_SIZE } from '#lib/publish/cards/frame';
import { download } from '../../../../download';
import { NO_EPISODE } from '../answer';
import { COLOURS, lookOfRequest } from '../look';
import { readCard } from '../read-cards';

interface Context {
  readonly params: Promise<{ readonly id: string; readonly file: string }>;
}

const NAME = /^(?<name>[a-z0-9-]+)\.(?<as>png|svg)$/;

/**
 * One picture of a card by its file's name, PNG or SVG with letters as paths; with `seen` an SVG over drawn footage, to be
 * shown on a page.
 */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { id, file: asked } = await params;
  const { name = '', as } = NAME.exec(asked)?.groups ?? {};
  const look = lookOfRequest(request);
  const card = await readCard(id, name, look);
  if (!card) return new Response(NO_EPISODE, { status: 404 });
  const { file } = card;
  if (!file || (as !== 'png' && as !== 'svg')) {
    return new Response('There is no such card any more: look at the page of the cards again.\n', {
      status: 404,
    });
  }
  if (new URL(request.url).searchParams.has('seen')) {
    const size = file.card.kind === 'thumbnail' ? THUMBNAIL_SIZE : look.size;
    const svg = overFootage(file.svg, size, look.over, COLOURS);
    const bytes = await drawn({ svg, as: 'svg' }, request.signal);
    return new Response(bytes, {
      headers: { 'content-type': 'image/svg+xml', 'cache-control': 'no-store' },
    });
  }
  const bytes = await drawn({ svg: file.svg, as }, request.signal);
  return download(bytes, as === 'png' ? 'image/png' : 'image/svg+xml', asked);
}
