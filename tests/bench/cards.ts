import { readFileSync } from 'node:fs';
import { parseEpisodeFile } from '#lib/episode/file';
import { cardFiles } from '#lib/publish/cards/card-files';
import { cardsOf } from '#lib/publish/cards/cards-of';
import { CUT_SIZES } from '#lib/publish/cards/frame';
import { numbersToPublish } from '#lib/publish/from-lock';
import { drawn } from '#lib/work/drawings';
import { DAY, NIGHT } from '../../app/_ui/palette';
import { ms, quantile, timed } from './timing';

/** `npm run bench -- cards`: all cards of the demo as PNG, in a thread, beside one rectangle of the same size. */

const LIMIT_MS = 200;
const COLOURS = {
  ...DAY,
  chalkSoft: DAY['chalk-soft'],
  handOnDark: NIGHT.hand,
  edge: NIGHT.slate,
};

export async function run(): Promise<void> {
  const read = parseEpisodeFile(readFileSync('seed/demo.episode.json', 'utf8'));
  if (!read.ok) throw new Error('the demo must be readable');
  const { ms: numbersMs, value: cards } = await timed(() =>
    cardsOf(numbersToPublish(read.value, null)),
  );
  console.log(`${cards.length} cards of the demo; their numbers and words: ${ms(numbersMs)} ms`);
  const { signal } = new AbortController();
  // The thread is begun and the drawing library loaded before anything is timed.
  await drawn({ svg: rectangle(16, 9), as: 'png' }, signal);
  let over = false;
  for (const size of CUT_SIZES) {
    const { ms: layoutMs, value: files } = await timed(() =>
      cardFiles(cards, { size, ground: 'plate', colours: COLOURS }),
    );
    const inCut = files.filter(({ card }) => card.kind !== 'thumbnail');
    const [width = 0, height = 0] = size.split('x').map(Number);
    const bare: number[] = [];
    const took: number[] = [];
    const worked: number[] = [];
    for (const { svg } of inCut) {
      bare.push(
        (await timed(() => drawn({ svg: rectangle(width, height), as: 'png' }, signal))).ms,
      );
      const before = process.cpuUsage();
      took.push((await timed(() => drawn({ svg, as: 'png' }, signal))).ms);
      const { user, system } = process.cpuUsage(before);
      worked.push((user + system) / 1000);
    }
    const each = layoutMs / files.length;
    const median = quantile(took, 0.5) + each;
    const busy = quantile(worked, 0.5) + each;
    console.log(
      `${size}: ${ms(median)} ms a card (median), ${ms(quantile(took, 1) + each)} at most, of it ${ms(each)} laying it out; ${ms(busy)} of processor; a bare rectangle ${ms(quantile(bare, 0.5))} ms`,
    );
    // By the processor's time, so that what else runs on the machine is not counted.
    if (size === '1920x1080' && busy > LIMIT_MS) over = true;
  }
  if (over) {
    console.error(`Over ${LIMIT_MS} ms a card at 1920x1080.`);
    process.exitCode = 1;
  }
}

function rectangle(width: number, height: number): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><rect x="${width / 9}" y="${height / 9}" width="${width / 2}" height="${height / 2}"/></svg>`;
}
