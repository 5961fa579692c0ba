import { filmedTogether, type DayFile } from '#lib/episode/also-filmed';
import { sourceText } from '#lib/safety/caution';
import { daylightText, daySheet, type DaySheetRow } from '#lib/shoot/day-sheet';
import { clockText, degreesText, minutesText } from '#lib/shoot/day-words';
import type { ShootPlan } from '#lib/shoot/plan';
import { wrapText } from '#lib/shoot/wrap-text';

/** Widest line of the sheet, in characters. */
const WIDTH = 80;
const CLOCK_WIDTH = 16;
const INDENT = ' '.repeat(CLOCK_WIDTH + 6);

/**
 * The day sheet as plain text of at most 80 columns, lines ended by LF: the day by the clock with
 * marks for hands, oven and what runs by itself, the shots of each step, what must come soon after
 * what, perishable lots against their limit, inside temperatures with rest, cautions with source.
 */
export function daySheetText(given: DayFile, plan: ShootPlan): string {
  const file = filmedTogether(given);
  const { episode } = file;
  const sheet = daySheet(file, plan);
  const kind = plan.kind === 'asLived' ? 'as lived' : 'packed';
  const lines = [
    ...wrapText(`DAY SHEET: ${episode.title}`, WIDTH),
    ...wrapText(
      `${plan.date}, ${kind}, from ${clockText(plan.startMin)}, wrap ${clockText(plan.wrapMin)} with the washing-up done.`,
      WIDTH,
    ),
    ...wrapText(capital(`${daylightText(sheet.daylight)}.`), WIDTH),
  ];
  const section = (title: string, body: readonly string[]): void => {
    if (body.length > 0) lines.push('', title, ...body);
  };
  section(
    'NO PLAN FOUND THAT KEEPS THESE',
    plan.broken.flatMap((rule) => bullet(rule.message)),
  );
  section('BY THE CLOCK  (H hands, O oven, - by itself, C camera)', [
    ...sheet.rows.flatMap((row) => rowLines(file, row)),
  ]);
  section(
    'SOON AFTER, HOT OR FRESH',
    sheet.soonAfter.flatMap((entry) => bullet(entry.text)),
  );
  section(
    'OUT OF THE REFRIGERATOR',
    sheet.lots.flatMap((lot) =>
      bullet(
        `${lot.name}: ${minutesText(lot.minutes)} in all, of ${minutesText(lot.limitMin)} at most${lot.minutes > lot.limitMin ? ' - TOO LONG' : ''}`,
      ),
    ),
  );
  section(
    'INSIDE TEMPERATURES',
    sheet.rows.flatMap(({ entry, inside }) =>
      inside === null
        ? []
        : bullet(
            `${entry.title}, at ${clockText(entry.endMin)}: ${degreesText(inside.milliC, episode.region)}${inside.restS > 0 ? `, then rest ${minutesText(Math.ceil(inside.restS / 60))}` : ''}`,
          ),
    ),
  );
  section('CAUTIONS', [
    ...sheet.cautions.flatMap((caution) =>
      bullet(`${caution.text} [${sourceText(caution.source)}]`),
    ),
    ...wrapText(sheet.localCode, WIDTH),
  ]);
  return `${lines.join('\n')}\n`;
}

function rowLines(file: DayFile, row: DaySheetRow): string[] {
  const { entry } = row;
  const oven = file.kitchen.ovens.find((candidate) => candidate.id === entry.ovenId);
  const where =
    oven !== undefined && entry.milliC !== null && entry.kind === 'step'
      ? `, ${oven.name} at ${degreesText(entry.milliC, file.episode.region)}`
      : '';
  const burners =
    entry.burners === 0 ? '' : `, ${entry.burners} burner${entry.burners === 1 ? '' : 's'}`;
  const appliance = row.appliance === null ? '' : `, ${row.appliance}`;
  const segment =
    row.segmentTitle === null || entry.kind !== 'step' ? '' : ` (${row.segmentTitle})`;
  const start = `${clockSpan(entry.startMin, entry.endMin).padEnd(CLOCK_WIDTH)} ${marks(row).padEnd(5)}`;
  const further = [
    ...row.shots.map((shot) => `shot: ${[shot.title, shot.framing].filter(Boolean).join(', ')}`),
    ...(row.note === '' ? [] : [row.note]),
    ...row.remarks.map((remark) => `! ${remark}`),
  ];
  return [
    ...wrapText(`${entry.title}${segment}${where}${burners}${appliance}`, WIDTH, start, INDENT),
    ...further.flatMap((text) => wrapText(text, WIDTH, INDENT, `${INDENT}  `)),
  ];
}

function marks({ entry }: DaySheetRow): string {
  const who = entry.hands ? 'H' : entry.ovenId === null ? '-' : ' ';
  return `${who}${entry.ovenId === null ? ' ' : 'O'}${entry.onCamera ? 'C' : ' '}`;
}

/** A start and end in few characters; "+1" marks the next day. */
function clockSpan(startMin: number, endMin: number): string {
  const short = (minute: number): string =>
    clockText(minute)
      .replace(' next day', '+1')
      .replace(/ day (\d+)$/, (_, day) => `+${Number(day) - 1}`);
  return startMin === endMin ? short(startMin) : `${short(startMin)}-${short(endMin)}`;
}

function bullet(text: string): string[] {
  return wrapText(text, WIDTH, '- ', '  ');
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
