import { keepLabelPhoto, readLabelPhoto } from '#lib/store/photos-of-lists';
import { photoAnswer, takePhoto } from '../../../../../_sync/photo-answers';
import { queryOf } from '../../load-list';
import { askedList } from '../../scope';

interface Context {
  readonly params: Promise<{ readonly id: string; readonly sha256: string }>;
}

/** Takes the bytes of a photo that an entry of the list names by this hash. */
export async function PUT(request: Request, { params }: Context): Promise<Response> {
  const { id, sha256 } = await params;
  const { scope } = askedList(id, queryOf(request));
  return takePhoto(request, sha256, (bytes) => keepLabelPhoto(scope, sha256, bytes));
}

/** A photo of a label from the shop. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { id, sha256 } = await params;
  return photoAnswer(await readLabelPhoto(askedList(id, queryOf(request)).scope, sha256));
}
