import { nameOf, overlap, upMinutes, type Carried, type CheckedEntry } from './checker-data';
import type { CheckedSegment, Facts } from './checker-data';
import { sunAt } from './checker-sun';

/** What steps, segments and the kitchen bring along beside the ties that a person writes. */
export function keptFaults(facts: Facts): string[] {
  return [
    ...lightFaults(facts),
    ...contactFaults(facts),
    ...roomFaults(facts),
    ...cameraFaults(facts),
    ...biteFaults(facts),
    ...storyFaults(facts),
  ];
}

/** What needs the sun stands between sunrise and sunset, the day's margin off both. The sun to two minutes. */
function lightFaults({ file, day, carried }: Facts): string[] {
  const { lat, lon, zone } = file.kitchen;
  if (lat === null || lon === null) return [];
  const sun = sunAt({ lat, lon, zone }, day.date);
  if (sun === 'always up') return [];
  return [...carried.values()].flatMap(({ step, entry }) => {
    if (!step.daylight) return [];
    if (sun === 'never up') return [`light: ${nameOf(entry)} needs a sun that does not rise`];
    const from = sun.riseMin + day.lightMarginMin - 2;
    const until = sun.setMin - day.lightMarginMin + 2;
    const fits = entry.startMin >= from && entry.endMin <= until;
    return fits ? [] : [`light: ${nameOf(entry)} is not between ${from} and ${until}`];
  });
}

const isClean = (entry: CheckedEntry, s: number): boolean =>
  entry.title.startsWith('Clean down') && entry.hands && entry.endMin - entry.startMin >= s;

/** Between raw animal food and what is eaten as it is, and after the last raw work of a dish, there is a clean-down. */
function contactFaults({ file, plan, segments, carried }: Facts): string[] {
  const cleans = plan.entries.filter((e) => isClean(e, upMinutes(file.kitchen.cleanDownS)));
  const touching = (contact: string): Carried[] =>
    [...carried.values()].filter(({ step }) => step.contact === contact);
  const between = touching('readyToEat').flatMap(({ entry: ready }) =>
    touching('rawAnimal').flatMap(({ entry: raw }) => {
      if (overlap(raw, ready)) return [`contact: ${nameOf(raw)} and ${nameOf(ready)} overlap`];
      if (raw.startMin >= ready.endMin || raw.endMin > ready.startMin) return [];
      const cleaned = cleans.some(
        (clean) => clean.startMin >= raw.endMin && clean.endMin <= ready.startMin,
      );
      return cleaned ? [] : [`contact: no clean-down from ${nameOf(raw)} to ${nameOf(ready)}`];
    }),
  );
  const after = segments.flatMap((segment) => {
    const raw = touching('rawAnimal').filter((each) => each.segment.id === segment.id);
    const last = Math.max(...raw.map(({ entry }) => entry.endMin));
    const cleaned = cleans.some((clean) => clean.startMin >= last);
    return raw.length === 0 || cleaned
      ? []
      : [`contact: "${segment.title}" is not cleaned up after`];
  });
  return [...between, ...after];
}

/** No more on the counter and in an appliance than there is room for. */
function roomFaults({ file, carried }: Facts): string[] {
  const all = [...carried.values()];
  const most = (units: (of: Carried) => number): number =>
    Math.max(
      0,
      ...all.map(({ entry: { startMin } }) =>
        all
          .filter(({ entry }) => entry.startMin <= startMin && startMin < entry.endMin)
          .reduce((sum, of) => sum + units(of), 0),
      ),
    );
  const places = file.kitchen.counterPlaces;
  const counter = most(({ step }) => step.counter);
  return [
    ...(places !== null && counter > places ? [`counter: ${counter} places of ${places}`] : []),
    ...file.kitchen.appliances.flatMap(({ id, name, places: room }) => {
      const used = most(({ step }) => (step.applianceId === id ? 1 : 0));
      return used > room ? [`appliance: ${name} has ${used} of ${room}`] : [];
    }),
  ];
}

/** Between two set-ups the camera is moved, by the hands. */
function cameraFaults({ file, plan, carried }: Facts): string[] {
  const { cameraChangeS } = file.kitchen;
  if (cameraChangeS === null || cameraChangeS === 0) return [];
  const filmed = [...carried.values()]
    .filter(({ step }) => step.onCamera && step.cameraSetUp !== '')
    .sort((a, b) => a.entry.startMin - b.entry.startMin);
  return filmed.flatMap(({ step, entry }, index) => {
    const before = filmed[index - 1];
    if (before === undefined || before.step.cameraSetUp === step.cameraSetUp) return [];
    const moved = plan.entries.some(
      (e) =>
        e.kind === 'cameraMove' &&
        e.hands &&
        e.endMin - e.startMin >= upMinutes(cameraChangeS) &&
        e.startMin >= before.entry.endMin &&
        e.endMin <= entry.startMin,
    );
    return moved
      ? []
      : [`camera: it is not moved from ${nameOf(before.entry)} to ${nameOf(entry)}`];
  });
}

const BITES = new Set(['taste', 'eat']);

/** Before the first bite: the shots written before it, and the rest of what must rest. */
function biteFaults({ segments, carried }: Facts): string[] {
  return segments
    .filter(({ recipe }) => recipe !== null)
    .flatMap(({ steps }) => {
      const there = steps.flatMap(({ id }) => carried.get(id) ?? []);
      const first = there.findIndex(({ step }) => BITES.has(step.role));
      const bites = there.filter(({ step }) => BITES.has(step.role));
      return there.slice(0, Math.max(0, first)).flatMap(({ step, entry }) => {
        if (step.role !== 'shoot' && step.restS === 0) return [];
        const from = entry.endMin + upMinutes(step.restS);
        return bites
          .filter((bite) => bite.entry.startMin < from)
          .map(
            (bite) => `bite: ${nameOf(bite.entry)} comes before ${from}, after ${nameOf(entry)}`,
          );
      });
    });
}

const SOILS = new Set(['prep', 'cook', 'shoot', 'taste']);
const SHOWN = new Set(['shoot', 'talk']);

/** Shots of a segment before anything of a dish is dirty, or after every dish is ready. */
function storyFaults({ segments, carried }: Facts): string[] {
  const entriesOf = (segment: CheckedSegment, roles: ReadonlySet<string>): CheckedEntry[] =>
    segment.steps.flatMap(({ id, role }) => {
      const entry = roles.has(role) ? carried.get(id)?.entry : undefined;
      return entry === undefined ? [] : [entry];
    });
  return segments.flatMap((segment) => {
    const said = entriesOf(segment, SHOWN);
    const dishes = segments.filter(({ id, recipe }) => id !== segment.id && recipe !== null);
    if (said.length === 0) return [];
    if (segment.filmedWhen === 'beforeDirty') {
      const dirty = dishes.flatMap((dish) => entriesOf(dish, SOILS));
      const last = Math.max(...said.map(({ endMin }) => endMin));
      const early = dirty.filter(({ startMin }) => startMin < last);
      return early.map((entry) => `story: ${nameOf(entry)} is before "${segment.title}" is filmed`);
    }
    if (segment.filmedWhen === 'afterReady') {
      const made = dishes.flatMap((dish) => entriesOf(dish, new Set(['prep', 'cook', 'taste'])));
      const first = Math.min(...said.map(({ startMin }) => startMin));
      const late = made.filter(({ endMin }) => endMin > first);
      return late.map((entry) => `story: ${nameOf(entry)} is after "${segment.title}" is filmed`);
    }
    return [];
  });
}
