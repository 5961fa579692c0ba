import { filmedTogether } from '#lib/episode/also-filmed';
import type { EpisodeFile } from '#lib/episode/schema';
import { eveningBefore, type EveningBefore } from '#lib/overview/evening-before';
import {
  cardWords,
  eveningClock,
  EVERY_TIME,
  outfitWords,
  pinnedWords,
  shortWords,
  tareWords,
  tieWords,
  tooEarlyWords,
  weighOutWords,
} from '#lib/overview/evening-words';
import { FOLLOW_LOCAL_CODE, sourceText } from '#lib/safety/caution';
import { minutesText } from '#lib/shoot/day-words';
import type { EveningStep } from '#lib/shoot/evening';
import type { ShootPlan } from '#lib/shoot/plan';
import { wrapText } from '#lib/shoot/wrap-text';

/** Widest line, in characters. */
const WIDTH = 80;
const INDENT = ' '.repeat(10);

/**
 * The evening before as plain text of at most 80 columns, lines ended by LF: its steps by the clock, then what to
 * get ready with a box to tick before each. Null where the file has no filming day.
 */
export function eveningText(file: EpisodeFile, plan: ShootPlan): string | null {
  const evening = eveningBefore(file, plan);
  if (evening === null) return null;
  const lines = [
    ...wrapText(`THE EVENING BEFORE: ${filmedTogether(file).episode.title}`, WIDTH),
    `${evening.date}, for filming on ${plan.date}`,
  ];
  const section = (title: string, body: readonly string[]): void => {
    if (body.length > 0) lines.push('', title, ...body);
  };
  section(
    'BEGIN BY',
    evening.steps.flatMap((step) => stepLines(step, evening.date)),
  );
  section('WEIGH OUT', weighOutLines(evening.weighOut));
  section('SHORT IN THE PANTRY', [
    ...evening.short.items.flatMap((item) => box(shortWords(item))),
    ...evening.short.unmatched.flatMap((line) => box(`${line}: no food chosen yet`)),
  ]);
  section('GET READY', [
    ...EVERY_TIME.flatMap(box),
    ...box(cardWords(evening.cards, file.kitchen.videoMbps)),
    ...box(outfitWords(evening.outfit)),
    ...tareWords(evening.tares).flatMap(box),
  ]);
  if (evening.cautions.length > 0) {
    section('CAUTIONS', [
      ...evening.cautions.flatMap(({ text, source }) =>
        wrapText(`${text} [${sourceText(source)}]`, WIDTH, '- ', '  '),
      ),
      ...wrapText(FOLLOW_LOCAL_CODE, WIDTH),
    ]);
  }
  return `${lines.join('\n')}\n`;
}

function stepLines(step: EveningStep, date: string): string[] {
  const clock = eveningClock(step.startMin, date);
  const hands = step.step.hands ? 'hands' : 'by itself';
  const length = minutesText(step.endMin - step.startMin);
  const early = tooEarlyWords(step, date);
  const pinned = pinnedWords(step);
  const further = [
    ...step.ties.map(tieWords),
    ...step.shots.map(
      ({ title, framing }) => `shot: ${[title, framing].filter(Boolean).join(', ')}`,
    ),
    ...(step.step.note === '' ? [] : [step.step.note]),
    ...(pinned === null ? [] : [`! ${pinned}`]),
    ...(early === null ? [] : [`! ${early}`]),
  ];
  return [
    ...wrapText(
      `${step.step.title} (${step.segmentTitle}), ${length}, ${hands}`,
      WIDTH,
      `[ ] ${clock.padEnd(5)} `,
      INDENT,
    ),
    ...further.flatMap((text) => wrapText(text, WIDTH, INDENT, `${INDENT}  `)),
  ];
}

function weighOutLines(lines: EveningBefore['weighOut']): string[] {
  const dishes = [...new Set(lines.map(({ dish }) => dish))];
  return dishes.flatMap((dish) => [
    ...wrapText(`${dish}:`, WIDTH),
    ...lines.filter((line) => line.dish === dish).flatMap((line) => box(weighOutWords(line))),
  ]);
}

function box(text: string): string[] {
  return wrapText(text, WIDTH, '[ ] ', '    ');
}
