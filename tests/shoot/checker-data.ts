/**
 * The shapes that the checker of a shooting order reads. They are written out here and not imported, so that
 * the checker shares nothing with the code it judges; an episode file and a shooting order fit them as they are.
 */

export interface CheckedStep {
  readonly id: string;
  readonly title: string;
  readonly role: string;
  readonly usualS: number;
  readonly choose: { readonly minS: number; readonly maxS: number } | null;
  readonly hands: boolean;
  readonly burners: number;
  readonly racks: number;
  readonly oven: { readonly ovenId: string | null; readonly milliC: number } | null;
  readonly onCamera: boolean;
  readonly daylight: boolean;
  readonly restS: number;
  readonly contact: string | null;
  readonly evening: boolean;
  readonly cameraSetUp: string;
  readonly applianceId: string | null;
  readonly counter: number;
}

export type CheckedAnchor = 'start' | 'end';

export interface CheckedLink {
  readonly id: string;
  readonly fromStepId: string;
  readonly toStepId: string;
  readonly fromAnchor: CheckedAnchor;
  readonly toAnchor: CheckedAnchor;
  readonly minLagS: number | null;
  readonly maxLagS: number | null;
  readonly reason: string;
}

export interface CheckedLot {
  readonly id: string;
  readonly name: string;
  readonly limitS: number;
  readonly thrownAway: boolean;
  readonly spans: readonly {
    readonly fromStepId: string;
    readonly fromAnchor: CheckedAnchor;
    readonly toStepId: string;
    readonly toAnchor: CheckedAnchor;
  }[];
}

export interface CheckedSegment {
  readonly id: string;
  readonly kind: string;
  readonly title: string;
  readonly eaten: { readonly num: number; readonly den: number };
  readonly steps: readonly CheckedStep[];
  readonly perishables: readonly CheckedLot[];
  readonly washUpS: number;
  readonly recipe: object | null;
  readonly filmedWhen: string | null;
}

export interface CheckedOven {
  readonly id: string;
  readonly name: string;
  readonly racks: number;
  readonly coldMilliC: number;
  readonly mostMilliC?: number | null;
  readonly changes: readonly {
    readonly fromMilliC: number;
    readonly toMilliC: number;
    readonly seconds: number;
  }[];
  readonly heatSPerC: number;
  readonly coolSPerC: number;
}

export interface CheckedAppointment {
  readonly id: string;
  readonly title: string;
  readonly startMin: number;
  readonly endMin: number;
  readonly hands: boolean;
}

export interface CheckedDay {
  readonly id: string;
  readonly date: string;
  readonly kind: 'asLived' | 'packed';
  readonly startMin: number;
  readonly wrapByMin: number | null;
  readonly mealGapMin: number;
  readonly lightMarginMin: number;
  readonly segments: readonly { readonly segmentId: string; readonly part: string }[];
  readonly appointments: readonly CheckedAppointment[];
  readonly pins: readonly {
    readonly stepId: string;
    readonly notBeforeMin: number | null;
    readonly notAfterMin: number | null;
  }[];
}

export interface CheckedEpisode {
  readonly segments: readonly CheckedSegment[];
  readonly links: readonly CheckedLink[];
}

export interface CheckedFile {
  readonly kitchen: {
    readonly burners: number;
    readonly ovens: readonly CheckedOven[];
    readonly zone: string;
    readonly lat: number | null;
    readonly lon: number | null;
    readonly counterPlaces: number | null;
    readonly cameraChangeS: number | null;
    readonly cleanDownS: number;
    readonly appliances: readonly {
      readonly id: string;
      readonly name: string;
      readonly places: number;
    }[];
  };
  readonly episode: CheckedEpisode;
  /** Other episodes that are filmed on the same day. */
  readonly also?: readonly CheckedEpisode[] | undefined;
  readonly day: CheckedDay | null;
}

export interface CheckedEntry {
  readonly id: string;
  readonly kind: 'step' | 'preheat' | 'coolDown' | 'washUp' | 'cameraMove' | 'appointment';
  readonly stepId: string | null;
  readonly segmentId: string | null;
  readonly title: string;
  readonly startMin: number;
  readonly endMin: number;
  readonly hands: boolean;
  readonly onCamera: boolean;
  readonly ovenId: string | null;
  readonly milliC: number | null;
  readonly racks: number;
  readonly burners: number;
  readonly why: string;
}

export interface CheckedPlan {
  readonly dayId: string;
  readonly date: string;
  readonly kind: 'asLived' | 'packed';
  readonly startMin: number;
  readonly wrapMin: number;
  readonly status: 'feasible' | 'stuck';
  readonly entries: readonly CheckedEntry[];
  readonly lots: readonly {
    readonly perishableId: string;
    readonly segmentId: string;
    readonly name: string;
    readonly minutes: number;
    readonly limitMin: number;
  }[];
  readonly broken: readonly unknown[];
}

/** A step with the one entry that carries it out. */
export interface Carried {
  readonly step: CheckedStep;
  readonly segment: CheckedSegment;
  readonly entry: CheckedEntry;
}

/** The day, the segments filmed on it in viewing order, and the steps that have exactly one entry. */
export interface Facts {
  readonly file: CheckedFile;
  readonly day: CheckedDay;
  readonly plan: CheckedPlan;
  readonly segments: readonly CheckedSegment[];
  readonly carried: ReadonlyMap<string, Carried>;
}

/** Whole minutes that cover a length in seconds: 61 s takes 2 min. */
export const upMinutes = (s: number): number => Math.ceil(s / 60);

/** Whole minutes that fit in a length in seconds: 119 s leaves 1 min. */
export const downMinutes = (s: number): number => Math.floor(s / 60);

/** Whether two entries share any time; one that takes no time shares none, and touching ends share none. */
export function overlap(a: CheckedEntry, b: CheckedEntry): boolean {
  return Math.max(a.startMin, b.startMin) < Math.min(a.endMin, b.endMin);
}

/** The minute at an entry's start or end. */
export function minuteAt(entry: CheckedEntry, anchor: CheckedAnchor): number {
  return anchor === 'start' ? entry.startMin : entry.endMin;
}

/** How an entry is called in a fault. */
export function nameOf(entry: CheckedEntry): string {
  return `"${entry.title}" (${entry.id}) ${entry.startMin}–${entry.endMin}`;
}

/** Every pair of entries that share time. */
export function overlappingPairs(
  entries: readonly CheckedEntry[],
): (readonly [CheckedEntry, CheckedEntry])[] {
  return entries.flatMap((a, i) =>
    entries.slice(i + 1).flatMap((b) => (overlap(a, b) ? [[a, b] as const] : [])),
  );
}
