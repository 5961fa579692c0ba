import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { eveningBefore } from '#lib/overview/evening-before';
import { EVERY_TIME, weighOutWords } from '#lib/overview/evening-words';
import { planDay } from '#lib/shoot/plan-day';
import { EveningView } from '../../app/episodes/[id]/day/evening/_components/evening-view';
import { demoFile, words } from './page-support';

vi.mock('next/navigation', () => ({ usePathname: () => '/' }));

const demo = demoFile();
const plan = planDay(demo, { seed: 1 });

function page(file: EpisodeFile, searching = false) {
  const evening = eveningBefore(file, plan);
  if (!evening) throw new Error('the demo has a day');
  const markup = renderToStaticMarkup(
    <EveningView file={file} evening={evening} plan={plan} searching={searching} dayId={null} />,
  );
  return { evening, markup, text: words(markup) };
}

const segments = demo.episode.segments.map((segment) => ({
  ...segment,
  steps: segment.steps.filter(({ evening }) => !evening),
}));
const withoutEvening = { ...demo, episode: { ...demo.episode, segments } };

describe('the page of the evening before', () => {
  test('says how a step gets there while there is none, and lists all the rest', () => {
    const { evening, text, markup } = page(withoutEvening);
    expect(text).toContain('Tick “done the evening before”');
    for (const line of evening.weighOut) expect(text).toContain(weighOutWords(line));
    for (const line of EVERY_TIME) expect(text).toContain(line);
    expect(text).toContain('FDA Food Code, 3-501.13');
    expect(text).toContain('Follow your local food code');
    const boxes = markup.match(/type="checkbox"/g) ?? [];
    expect(boxes.length).toBeGreaterThan(evening.weighOut.length + EVERY_TIME.length);
  });

  test('a step of the evening stands with its latest time and what waits for it', () => {
    const { text, evening } = page(demo);
    expect(evening.steps).toHaveLength(1);
    const [{ step } = { step: { title: 'none' } }] = evening.steps;
    expect(text).toMatch(new RegExp(`\\d\\d:\\d\\d ${step.title}`));
    for (const { title } of evening.steps[0]?.ties ?? []) expect(text).toContain(`before ${title}`);
  });

  test('while the day is still looked for, its times are said to be provisional', () => {
    expect(page(demo, true).text).toContain('These times may change');
    expect(page(demo).text).not.toContain('These times may change');
  });
});
