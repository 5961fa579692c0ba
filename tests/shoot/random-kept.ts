import type { EpisodeFile } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import { seeded } from './seeded';
import { randomDay } from './random-day';

const SET_UPS = ['', 'over the board', 'at the window'];

/**
 * A random filming day whose steps and kitchen ask for more: raw and ready-to-eat food, rests, an appliance, a counter,
 * moves of the camera, daylight, a part of a dish, a story. Nobody says that such a day can be kept.
 */
export function randomKeptDay(seed: number): EpisodeFile {
  const file = randomDay(seed);
  const chance = seeded(seed + 50_000);
  const more = (step: Step): Step => ({
    ...step,
    contact: !step.hands
      ? null
      : chance.percent(12)
        ? 'rawAnimal'
        : chance.percent(20)
          ? 'readyToEat'
          : null,
    restS: step.role === 'cook' && chance.percent(25) ? chance.int(60, 900) : 0,
    applianceId: !step.hands && step.oven === null && chance.percent(40) ? 'fryer' : null,
    counter: step.hands ? chance.int(0, 2) : chance.int(0, 1),
    cameraSetUp: step.onCamera ? chance.pick(SET_UPS) : '',
    daylight: step.onCamera && chance.percent(25),
    evening: step.role === 'prep' && chance.percent(5),
  });
  const { day, kitchen, episode } = file;
  return {
    ...file,
    kitchen: {
      ...kitchen,
      lat: 55.9,
      lon: 10.9,
      appliances: [{ id: 'fryer', name: 'Air fryer', places: chance.int(1, 2) }],
      counterPlaces: chance.percent(60) ? chance.int(2, 4) : null,
      cameraChangeS: chance.percent(60) ? chance.int(60, 300) : null,
      cleanDownS: chance.int(120, 600),
    },
    episode: {
      ...episode,
      segments: episode.segments.map((segment) => ({
        ...segment,
        steps: segment.steps.map(more),
        filmedWhen:
          segment.kind === 'talk' && chance.percent(50)
            ? chance.pick(['beforeDirty', 'afterReady'] as const)
            : null,
      })),
    },
    day: day && {
      ...day,
      lightMarginMin: chance.int(0, 60),
      segments: day.segments.map((each) => ({
        ...each,
        part: chance.percent(8) ? chance.pick(['cook', 'film'] as const) : 'all',
      })),
    },
  };
}
