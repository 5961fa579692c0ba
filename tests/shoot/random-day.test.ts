import { describe, expect, test } from 'vitest';
import { episodeFileSchema } from '#lib/episode/schema';
import { checkPlan } from './checker';
import { randomDay, randomDayWithWitness } from './random-day';

const SEEDS = Array.from({ length: 200 }, (_, seed) => seed);

describe('random filming days', () => {
  const days = SEEDS.map((seed) => randomDayWithWitness(seed));

  test('are valid episode files, the same for the same seed', () => {
    for (const [seed, { file }] of days.entries()) {
      expect(episodeFileSchema.parse(file)).toEqual(file);
      expect(randomDay(seed)).toEqual(file);
    }
  });

  test('can be kept: their witness has no fault', () => {
    for (const { file, witness } of days) expect(checkPlan(file, witness)).toEqual([]);
  });

  test('have two to five segments of three to nine steps, and a dish', () => {
    for (const { file } of days) {
      const filmed = file.day?.segments.length ?? 0;
      expect(filmed).toBeGreaterThanOrEqual(2);
      expect(filmed).toBeLessThanOrEqual(5);
      expect(file.episode.segments.some((s) => s.kind === 'recipe')).toBe(true);
      for (const { steps } of file.episode.segments) {
        expect(steps.length).toBeGreaterThanOrEqual(3);
        expect(steps.length).toBeLessThanOrEqual(9);
      }
    }
  });

  test('show every rule again and again', () => {
    const files = days.map((d) => d.file);
    const ofDay = (has: (day: NonNullable<(typeof files)[number]['day']>) => boolean) =>
      files.filter((f) => f.day !== null && has(f.day)).length;
    const ofStep = (
      has: (s: (typeof files)[number]['episode']['segments'][number]['steps'][number]) => boolean,
    ) => files.filter((f) => f.episode.segments.some((s) => s.steps.some(has))).length;
    const ofLink = (has: (l: (typeof files)[number]['episode']['links'][number]) => boolean) =>
      files.filter((f) => f.episode.links.some(has)).length;
    const meals = files.map((f) => {
      const ids = new Set(f.day?.segments.map((s) => s.segmentId));
      const filmed = f.episode.segments.filter((s) => ids.has(s.id));
      return filmed.filter((s) => s.steps.some((one) => one.role === 'eat')).length;
    });
    const counts = {
      asLived: ofDay((d) => d.kind === 'asLived'),
      packed: ofDay((d) => d.kind === 'packed'),
      wrapBy: ofDay((d) => d.wrapByMin !== null),
      appointments: ofDay((d) => d.appointments.length > 0),
      handsAppointments: ofDay((d) => d.appointments.some((a) => a.hands)),
      pins: ofDay((d) => d.pins.length > 0),
      pickups: ofDay((d) => d.segments.some((s) => s.pickup)),
      mealGap: ofDay((d) => d.mealGapMin > 0),
      oneMeal: meals.filter((n) => n === 1).length,
      threeMeals: meals.filter((n) => n === 3).length,
      talk: files.filter((f) => f.episode.segments.some((s) => s.kind === 'talk')).length,
      anotherDay: files.filter((f) => f.episode.segments.length > (f.day?.segments.length ?? 0))
        .length,
      twoOvens: files.filter((f) => f.kitchen.ovens.length === 2).length,
      oneBurner: files.filter((f) => f.kitchen.burners === 1).length,
      measured: files.filter((f) => f.kitchen.ovens.some((o) => o.changes.length > 0)).length,
      changesOfHeat: days.filter((d) => d.witness.entries.some((e) => e.kind === 'coolDown'))
        .length,
      namedOven: ofStep((s) => typeof s.oven?.ovenId === 'string'),
      anyOven: ofStep((s) => s.oven !== null && s.oven.ovenId === null),
      chosenLength: ofStep((s) => s.choose !== null),
      noLength: ofStep((s) => s.usualS === 0),
      filmedByItself: ofStep((s) => s.onCamera && !s.hands),
      takenOut: ofLink((l) => l.reason === 'must be taken out when done'),
      atOnce: ofLink((l) => l.maxLagS !== null && l.maxLagS < 60),
      shownHot: ofLink((l) => l.reason === 'shown hot'),
      across: ofLink((l) => l.id.startsWith('cross')),
      otherAnchors: ofLink((l) => l.fromAnchor === 'start' || l.toAnchor === 'end'),
      perishables: files.filter((f) =>
        f.episode.segments.some((s) => s.perishables.some((p) => p.spans.length > 1)),
      ).length,
      thrownAway: files.filter((f) =>
        f.episode.segments.some((s) => s.perishables.some((p) => p.thrownAway)),
      ).length,
    };
    for (const [what, count] of Object.entries(counts)) {
      expect(count, `${what} on ${count} of ${files.length} days`).toBeGreaterThanOrEqual(8);
    }
  });
});
