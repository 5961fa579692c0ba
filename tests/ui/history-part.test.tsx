import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test, vi } from 'vitest';
import { heldAgainst } from '#lib/publish/copied-text';
import { descriptionText } from '#lib/publish/description';
import type { Droppable } from '#lib/publish/description/what-to-drop';
import { numbersToPublish } from '#lib/publish/from-lock';
import { HistoryPart } from '../../app/episodes/[id]/publish/_components/history-part';
import { demoFile, words } from './page-support';

vi.mock('next/navigation', () => ({ usePathname: () => '/' }));
vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));

const publish = numbersToPublish(demoFile(), null);
const textOf = (without: readonly Droppable[]) => descriptionText(publish, { without });
const shown = (text: string, historyOnly = false) =>
  words(
    renderToStaticMarkup(
      <HistoryPart
        copied={[
          {
            ...{ id: 'c', at: 'Sat 12 Dec, 18:02', form: 'plain', seq: 1, text, historyOnly },
            ...heldAgainst(text, textOf),
          },
        ]}
      />,
    ),
  );

test('a text that was copied with parts left out does not read as changed, and says without what it is compared', () => {
  const whole = shown(textOf([]));
  expect(whole).not.toContain('compared');
  const short = shown(textOf(['method', 'ingredients']));
  for (const told of [whole, short]) expect(told).not.toContain('other words now');
  expect(short).toContain(
    'It has no method, ingredients, so it is compared with the text of now without.',
  );
  expect(shown(textOf(['method']).replace('1409 kcal', '1400 kcal'))).toContain('other words now');
});

test('a text whose lock came as history says so', () => {
  expect(shown(textOf([]))).not.toContain('history only');
  expect(shown(textOf([]), true)).toContain('lock 1, history only');
});
