import { listFile } from '#lib/shopping/list-file';
import { DAY, NIGHT } from '../../../../_ui/palette';
import { fileOf, loadList, queryOf } from '../load-list';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The shopping list as one file to carry along. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const loaded = await loadList((await params).id, queryOf(request));
  if (!loaded) return fileOf(null, 'text/plain', 'shopping.txt');
  const { list, shelves, today } = loaded;
  const text = listFile(list, shelves, {
    madeOn: today,
    day: coloursOf(DAY),
    night: coloursOf(NIGHT),
  });
  return fileOf(text, 'text/html', `shopping-${list.forDate ?? today}.html`);
}

const coloursOf = ({ paper, ink, soft, line }: typeof DAY) => ({
  paper: paper ?? '',
  ink: ink ?? '',
  soft: soft ?? '',
  line: line ?? '',
});
