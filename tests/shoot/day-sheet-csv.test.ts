import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { daySheetCsv } from '#lib/shoot/day-sheet-csv';
import { planDay } from '#lib/shoot/plan-day';
import { demoFile } from '../ui/page-support';
import { dayFile, link, segment, step } from './made-day';

type Read = Readonly<Record<string, string>>;

/** Read back by a general reader (csv-parse), strictly: every record as long as the head, CRLF alone. */
function readBack(file: EpisodeFile): { plan: ReturnType<typeof planDay>; records: Read[] } {
  const plan = planDay(file, { seed: 1, effort: 0 });
  const text = daySheetCsv(file, plan);
  const records: Read[] = parse(text, { columns: true, record_delimiter: '\r\n' });
  return { plan, records };
}

describe('the day sheet as a table', () => {
  it('of the demo has a record for each entry, whose minutes lie between its clock times', () => {
    const { plan, records } = readBack(demoFile());
    const entries = records.filter(({ kind }) => kind !== 'caution');
    expect(entries.map(({ what }) => what)).toEqual(plan.entries.map(({ title }) => title));
    const minuteOf = (clock = '') => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));
    for (const { start, end, minutes } of entries) {
      expect(minuteOf(end) - minuteOf(start)).toBe(Number(minutes));
    }
    const bake = entries.find(({ what }) => what === 'First bake');
    expect(bake).toMatchObject({
      dish: 'Tray-baked turkey meatloaf',
      who: 'by itself',
      oven: 'Oven',
      'oven temperature': '428 °F',
    });
    expect(entries.find(({ what }) => what === 'Brush on the glaze')?.mind).toContain(
      'at most 2 min after First bake',
    );
  });

  it('ends with the cautions, their sources, and the local code', () => {
    const { records } = readBack(demoFile());
    const minds = records.filter(({ kind }) => kind === 'caution').map(({ mind }) => mind);
    expect(minds.some((mind) => mind?.includes('165 °F'))).toBe(true);
    expect(minds.some((mind) => mind?.includes('out of the refrigerator'))).toBe(true);
    expect(minds.at(-1)).toMatch(/local/);
  });

  // RFC 4180, section 2: quotes around commas, quotes and line breaks, quotes doubled.
  it('keeps a title with commas and quotes, and lets no title be a formula', () => {
    const steps = [
      step('a', { title: '=HYPERLINK("http://x","y")', hands: true }),
      step('b', { title: 'Turn, then "rest"', note: '@home' }),
    ];
    const { records } = readBack(dayFile([segment('s', steps)], [link('a', 'b', 0, null)]));
    expect(records[0]?.what).toBe(`'=HYPERLINK("http://x","y")`);
    expect(records[1]).toMatchObject({ what: 'Turn, then "rest"', note: "'@home" });
  });
});
