import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { dayFacts } from '#lib/shoot/day-facts';
import { daySheet } from '#lib/shoot/day-sheet';
import { clockText } from '#lib/shoot/day-words';
import { likelyDay } from '#lib/shoot/likely';
import { likelyInWords } from '#lib/shoot/likely-words';
import { dayPlan } from '#lib/shoot/plan-day';
import { solveDay } from '#lib/shoot/solve-day';
import { LIMIT_HINT, limitWords } from '#lib/shoot/step-words';
import { dayColumnsOf } from '../../app/episodes/[id]/day/_components/day-columns-of';
import { DayView } from '../../app/episodes/[id]/day/_components/day-view';
import type { DayPage } from '../../app/episodes/[id]/day/_components/view';
import { demoFile, words } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  usePathname: () => '/',
  useRouter: () => ({ push: () => undefined }),
  redirect: vi.fn(),
}));

const demo = demoFile();

function pageOf(file: EpisodeFile, editing: string | null = null): DayPage {
  if (!file.day) throw new Error('this file has no day');
  const solved = solveDay(dayFacts(file), { seed: 1 });
  const plan = dayPlan(file, solved);
  const sheet = daySheet(file, plan);
  const likely = likelyDay(file, solved, { seed: 1, runs: 200 });
  return {
    file,
    day: file.day,
    plan,
    searching: false,
    sheet,
    likely: likely === null ? null : likelyInWords(likely, file, plan),
    spans: [],
    revs: {},
    days: [],
    adding: null,
    editing,
    tried: null,
    at: null,
  };
}

const html = (page: DayPage) => renderToStaticMarkup(<DayView page={page} />);
/** The part that is shown on screen, after the printed sheet. */
const screen = (markup: string) => markup.slice(markup.indexOf('<header'));
/** The part that is printed. */
const paper = (markup: string) => markup.slice(0, markup.indexOf('<header'));

describe('the day page of the demo', () => {
  const page = pageOf(demo);
  const markup = html(page);

  test('every entry of the plan stands on screen and on paper, with time, title and place', () => {
    for (const part of [screen(markup), paper(markup)]) {
      for (const { entry } of page.sheet.rows) {
        expect(words(part)).toContain(entry.title);
        expect(words(part)).toContain(clockText(entry.startMin));
      }
    }
    expect(paper(markup).match(/<tr/g)).toHaveLength(page.sheet.rows.length + 1);
  });

  test('how likely the wrap is stands on screen, with the weakest promise and what helps', () => {
    const said = words(screen(markup));
    expect(said).toMatch(/Wrap by \d\d:\d\d on one day in two, by \d\d:\d\d on nine days in ten\./);
    expect(said).toMatch(/The weakest promise is kept in \d+ of 100 days like this:/);
    expect(said).toContain('What helps most:');
    expect(words(paper(markup))).not.toContain('How likely');
  });

  test('nothing is likely of an order that is still looked for', () => {
    expect(words(html({ ...page, likely: null }))).not.toContain('How likely');
  });

  test('every entry tells why it stands there', () => {
    const reasons = screen(markup).match(/why then\?/g) ?? [];
    expect(reasons).toHaveLength(page.plan.entries.length);
    for (const { why } of page.plan.entries) expect(words(markup)).toContain(why);
  });

  test('columns: the hands, each oven, by itself; an entry stands where it needs something', () => {
    const columns = dayColumnsOf(page.sheet, 'EU');
    expect(columns.map(({ name }) => name)).toEqual([
      'Hands',
      ...demo.kitchen.ovens.map(({ name }) => name),
      'By itself',
    ]);
    const handed = page.plan.entries.filter(({ hands }) => hands);
    expect(columns[0]?.blocks).toHaveLength(handed.length);
    const baked = page.plan.entries.filter(({ ovenId }) => ovenId !== null);
    expect(columns[1]?.blocks).toHaveLength(baked.length);
    expect(columns[0]?.blocks.some(({ tone }) => tone === 'self')).toBe(false);
    expect(columns[1]?.blocks.some(({ tone }) => tone === 'hand')).toBe(false);
  });

  test('shots stand with their step, lots with their limit, cautions with their source', () => {
    const shots = demo.episode.segments.flatMap((segment) => segment.shots);
    expect(shots.length).toBeGreaterThan(10);
    const order = words(screen(markup).slice(0, screen(markup).indexOf('Soon after')));
    for (const shot of shots.filter(({ stepId }) => stepId !== null)) {
      expect(order).toContain(`shot: ${shot.title}`);
      expect(words(paper(markup))).toContain(`shot: ${shot.title}`);
    }
    for (const lot of page.plan.lots) expect(words(screen(markup))).toContain(lot.name);
    expect(words(screen(markup))).toContain('within its limit');
    expect(words(screen(markup))).toContain('USDA FSIS');
  });

  test('every link into the page leads to something on it', () => {
    const ids = new Set([...markup.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]));
    const targets = [...markup.matchAll(/href="#([^"]+)"/g)].map((match) => match[1]);
    expect(targets.length).toBeGreaterThan(20);
    expect(targets.filter((target) => target && !ids.has(target))).toEqual([]);
  });

  test('no id stands twice', () => {
    const ids = [...markup.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });

  test('a form is drawn only for the row that is being edited, with what stands there', () => {
    expect(markup).not.toContain('Save the step');
    const step = demo.episode.segments[1]?.steps[0];
    if (!step) throw new Error('the demo has steps');
    const editing = html(pageOf(demo, step.id));
    expect(editing).toContain('Save the step');
    expect(editing).toContain(`value="${step.title}"`);
    expect(editing.match(/<details[^>]* open=""/g)?.length ?? 0).toBeGreaterThan(0);
  });
});

describe('what is edited beside the steps', () => {
  const [lot] = demo.episode.segments.flatMap(({ perishables }) => perishables);
  const appointment = demo.day?.appointments[0];
  const pin = demo.day?.pins[0];
  if (!lot || !appointment || !pin) throw new Error('the demo has a lot, an appointment and a pin');
  const spans = lot.spans.map((span, index) => {
    return { ...span, id: `span-${index}`, rev: 1, perishableId: lot.id };
  });
  const drawn = (editing: string | null) => html({ ...pageOf(demo, editing), spans });

  test('all of it stands in words, folded, without a form', () => {
    const markup = drawn(null);
    for (const said of [
      'at most 120 min out in all',
      'from the start of Mix, and press it into the tray to the start of First bake',
      '11:00–11:05, takes the hands',
      'not before 09:20',
    ]) {
      expect(words(screen(markup))).toContain(said);
    }
    expect(markup).not.toMatch(/<details[^>]* open=""/);
    for (const name of ['limit', 'at', 'fromStepId', 'end']) {
      expect(markup).not.toContain(`name="${name}"`);
    }
  });

  test.each([
    [lot.id, 'limit', '120'],
    [`new-lot-${demo.episode.segments[1]?.id}`, 'limit', '120'],
    [appointment.id, 'end', '11:05'],
    [`new-appointment-${demo.day?.id}`, 'end', ''],
    [pin.id, 'at', '09:20'],
  ])('%s: its form alone is open, its fields filled', (row, name, value) => {
    const markup = drawn(row);
    const inputs = markup.match(new RegExp(`<input[^>]*name="${name}"[^>]*>`, 'g')) ?? [];
    expect(inputs).toHaveLength(1);
    expect(inputs[0]).toContain(`value="${value}"`);
    const opened = markup.match(/<details[^>]* open=""/g)?.length ?? 0;
    expect(opened).toBe(name === 'end' ? 1 : 2);
  });

  test('a stretch has a form of its own, with a row that can be led to', () => {
    const markup = drawn('span-0');
    expect(markup).toContain('id="row-span-0"');
    expect(markup.match(/<select[^>]*name="fromStepId"/g)).toHaveLength(1);
    expect(words(drawn(`new-span-${lot.id}`))).toContain('Let its clock run');
  });

  test('the limit of a lot comes from its source', () => {
    // Two hours, one above 90 °F: USDA FSIS, Danger Zone (40 °F to 140 °F).
    expect(LIMIT_HINT).toBe('Usually 120 min, above 32 °C (90 °F) 60 min (USDA FSIS).');
    expect(limitWords({ limitS: 3600, thrownAway: true })).toContain('it has no clock');
  });
});

describe('a day that cannot be kept', () => {
  test('says so in words and still tells what to do', () => {
    const tight: EpisodeFile = demo.day
      ? { ...demo, day: { ...demo.day, wrapByMin: demo.day.startMin + 60 } }
      : demo;
    const page = pageOf(tight);
    const text = words(screen(html(page)));
    expect(page.plan.broken.length).toBeGreaterThan(0);
    for (const { message } of page.plan.broken) expect(text).toContain(message);
    expect(page.plan.clash.length).toBeGreaterThan(1);
    expect(text).toContain('These rules cannot all be kept. Loosen or drop one of them:');
    for (const rule of page.plan.clash) expect(text).toContain(rule);
    for (const { title } of page.plan.entries) expect(text).toContain(title);
    expect(words(paper(html(page)))).toContain(page.plan.broken[0]?.message);
  });

  test('a day without steps leads to adding some', () => {
    const segments = demo.episode.segments.map((segment) => ({
      ...segment,
      steps: [],
      shots: [],
      perishables: [],
      washUpS: 0,
    }));
    const empty = {
      ...demo,
      episode: { ...demo.episode, segments, links: [] },
      day: demo.day && { ...demo.day, pins: [], appointments: [] },
    };
    const text = words(screen(html(pageOf(empty))));
    expect(text).toContain('add steps to a segment below');
    expect(text.match(/Add a step/g)).toHaveLength(segments.length);
  });
});
