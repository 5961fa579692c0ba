import { renderToStaticMarkup } from 'react-dom/server';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { Step } from '#lib/episode/step-schema';
import { UNSAID_KITCHEN } from '#lib/episode/unsaid';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { addStep, saveStep } from '../../app/episodes/[id]/day/actions';
import { StepForm } from '../../app/episodes/[id]/day/_components/step-form';
import {
  ovenChoices,
  ROLE_CHOICES,
  stepAsks,
  stepText,
} from '../../app/episodes/[id]/day/_components/step-texts';
import { AT, withFreshDatabase } from '../store/database';
import { demoFile, send, words } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', async () => {
  const support = await import('./page-support');
  return {
    usePathname: () => '/',
    redirect: (href: string) => {
      throw new support.Redirected(href);
    },
  };
});

const demo = demoFile();
const FRYER = { id: 'appliance-fryer', name: 'Air fryer', places: 1 };
const counting = {
  ...demo.kitchen,
  appliances: [FRYER, ...demo.kitchen.appliances],
  counterPlaces: 3,
  cameraChangeS: 240,
};
const SEGMENT = 'Barley skillet';

describe('the form of a step', () => {
  const [step] = demo.episode.segments.flatMap(({ steps }) => steps);
  if (!step) throw new Error('the demo has steps');
  const drawn = (kitchen: typeof demo.kitchen, change: Partial<Step> = {}) => {
    const given = { ...step, note: '', onCamera: false, coreMilliC: null, choose: null, ...change };
    return renderToStaticMarkup(
      <StepForm
        id="step"
        action={saveStep}
        hidden={{}}
        step={stepText(given, 'EU')}
        roles={ROLE_CHOICES}
        ovens={ovenChoices(kitchen.ovens)}
        asks={stepAsks(kitchen, given)}
        submit="Save"
        cancelHref="/"
      />,
    );
  };
  const names = (markup: string) =>
    [...markup.matchAll(/ name="([^"]+)"/g)].map(([, name]) => name);

  test('asks for appliance, counter and camera only in a kitchen that has or counts them', () => {
    const asked = ['applianceId', 'counter', 'cameraSetUp'];
    const plain = names(drawn({ ...demo.kitchen, ...UNSAID_KITCHEN }));
    expect(plain).toEqual(expect.arrayContaining(['contact', 'evening']));
    expect(plain.filter((name) => asked.includes(name ?? ''))).toEqual([]);
    expect(names(drawn(counting))).toEqual(expect.arrayContaining(asked));
    expect(words(drawn(counting))).toContain('Air fryer');
  });

  test('what a step has already stays in its form where the kitchen counts it no longer', () => {
    const kept = drawn(demo.kitchen, { counter: 2, cameraSetUp: 'over the board' });
    expect(kept).toMatch(/<input[^>]*name="counter"[^>]*value="2"/);
    expect(kept).toMatch(/<input[^>]*name="cameraSetUp"[^>]*value="over the board"/);
  });

  test('is folded until something of it was said', () => {
    expect(drawn(counting)).not.toContain('open=""');
    const said: Partial<Step>[] = [
      { contact: 'readyToEat' },
      { evening: true },
      { applianceId: FRYER.id },
      { counter: 1 },
      { cameraSetUp: 'wide' },
    ];
    for (const change of said) expect(drawn(counting, change)).toContain('open=""');
    expect(words(drawn(counting))).toContain('raw meat, poultry, fish or egg');
  });
});

describe('what a step touches, where it runs and when, by its form', () => {
  withFreshDatabase();
  let episodeId = '';
  beforeAll(async () => {
    const done = await importEpisodeFile({ ...demo, kitchen: counting }, AT);
    if (!done.ok) throw new Error(JSON.stringify(done.problems));
    episodeId = done.value.episodeId;
  });

  async function read() {
    const file = await readEpisodeFile(episodeId, '2026-12-10T08:00:00.000Z');
    const segment = file?.episode.segments.find(({ title }) => title === SEGMENT);
    if (!file || !segment) throw new Error('the demo has a skillet');
    const revs = await readRevisions(episodeId);
    const step = segment.steps.find(({ title }) => title === BASE.title);
    return { file, segment, step, rev: revs[step?.id ?? ''] ?? 0 };
  }
  const BASE = {
    title: 'Marinate the thighs',
    role: 'prep',
    usual: '5',
    hands: 'hands',
    burners: '0',
    racks: '0',
    ovenUnit: 'C',
    coreUnit: 'C',
  };

  test('all of it is kept', async () => {
    const { file, segment } = await read();
    const applianceId = file.kitchen.appliances[0]?.id ?? '';
    const said = {
      contact: 'rawAnimal',
      applianceId,
      counter: '2',
      cameraSetUp: ' over the bowl ',
    };
    await send(addStep, { episodeId, segmentId: segment.id, ...BASE, ...said, evening: 'on' });
    expect((await read()).step).toMatchObject({
      ...said,
      counter: 2,
      cameraSetUp: 'over the bowl',
      evening: true,
    });
  });

  test('what cannot be is refused at its field', async () => {
    const { step, rev } = await read();
    const sent = { episodeId, stepId: step?.id ?? '', rev, ...BASE };
    const refused = await send(saveStep, { ...sent, contact: 'hands', counter: '13' });
    expect(refused.state.problems.map(({ path }) => path).sort()).toEqual(['contact', 'counter']);
    expect(refused.state.typed.counter).toBe('13');
    const gone = await send(saveStep, { ...sent, applianceId: 'no-such-appliance' });
    expect(gone.state.problems).toMatchObject([{ code: 'gone' }]);
    expect((await read()).step).toMatchObject({ counter: 2, evening: true });
  });

  test('what was left empty is unsaid again', async () => {
    const { step, rev } = await read();
    await send(saveStep, { episodeId, stepId: step?.id ?? '', rev, ...BASE });
    expect((await read()).step).toMatchObject({
      contact: null,
      applianceId: null,
      counter: 0,
      cameraSetUp: '',
      evening: false,
    });
  });
});
