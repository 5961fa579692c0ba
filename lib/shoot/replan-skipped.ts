import type { DayFile } from '#lib/episode/also-filmed';
import type { StepLink } from '#lib/episode/step-schema';

/** What the day goes on without: steps by their ids, segments whose washing-up is left out. */
export interface Skipped {
  readonly stepIds: ReadonlySet<string>;
  readonly washUps: ReadonlySet<string>;
}

/**
 * The file as if the skipped steps were not in it. What had to come after a skipped step still comes after what
 * that step had to come after.
 */
export function withoutSkipped(file: DayFile, { stepIds, washUps }: Skipped): DayFile {
  if (stepIds.size === 0 && washUps.size === 0) return file;
  let links = file.episode.links;
  for (const stepId of stepIds) links = bridged(links, stepId);
  return {
    ...file,
    episode: {
      ...file.episode,
      links,
      segments: file.episode.segments.map((segment) => ({
        ...segment,
        washUpS: washUps.has(segment.id) ? 0 : segment.washUpS,
        steps: segment.steps.filter(({ id }) => !stepIds.has(id)),
      })),
    },
  };
}

function bridged(links: readonly StepLink[], stepId: string): StepLink[] {
  const before = links.filter((link) => link.toStepId === stepId && link.minLagS !== null);
  const after = links.filter((link) => link.fromStepId === stepId && link.minLagS !== null);
  const over = before.flatMap((one) =>
    after
      .filter((other) => other.toStepId !== one.fromStepId)
      .map((other): StepLink => ({
        ...other,
        id: `${one.id}+${other.id}`,
        fromStepId: one.fromStepId,
        fromAnchor: one.fromAnchor,
        minLagS: 0,
        maxLagS: null,
        reason: '',
      })),
  );
  const kept = links.filter((link) => link.fromStepId !== stepId && link.toStepId !== stepId);
  return [...kept, ...over];
}
