import { v7 as uuid } from 'uuid';
import { LAST, type StepsToAdd } from '#lib/method/steps-to-add';
import type { Edit } from '#lib/store/command';
import { UNSAID_STEP } from '#lib/episode/unsaid';

/** The text of a method that a dish is to keep. */
export interface MethodText {
  readonly recipeId: string;
  readonly rev: number;
  readonly text: string;
}

interface Into {
  readonly episodeId: string;
  readonly segmentId: string;
  readonly segmentRev: number;
  /** The step that the dish had last, and the places after its steps and the episode's ties. */
  readonly lastStepId: string | null;
  readonly stepPlace: number;
  readonly tiePlace: number;
  /** Null where the text that the dish has stays. */
  readonly method: MethodText | null;
}

/** The edit that keeps a method's text with its dish, where a description has it from. */
export function methodTextEdit({ recipeId, rev, text }: MethodText): Edit {
  return { op: 'update', entity: 'Recipe', id: recipeId, rev, patch: { method: text } };
}

/** The edits that add steps with their ties and text to a dish, in one act, and the id of the first of them. */
export function methodEdits(add: StepsToAdd, into: Into): { edits: Edit[]; firstId: string } {
  const ids = new Map(add.steps.map(({ key }) => [key, uuid()]));
  if (into.lastStepId !== null) ids.set(LAST, into.lastStepId);
  const idOf = (key: string): string => ids.get(key) ?? '';
  const { episodeId, segmentId } = into;
  const steps = add.steps.map(({ key, ...step }, index): Edit => ({
    op: 'create',
    entity: 'Step',
    row: {
      id: idOf(key),
      segmentId,
      position: into.stepPlace + index,
      ...UNSAID_STEP,
      ...step,
      chooseMinS: null,
      chooseMaxS: null,
      ovenId: null,
      restS: 0,
      onCamera: false,
      daylight: false,
    },
  }));
  const ties = add.ties.map(({ from, to, ...tie }, index): Edit => ({
    op: 'create',
    entity: 'StepLink',
    row: {
      id: uuid(),
      episodeId,
      position: into.tiePlace + index,
      fromStepId: idOf(from),
      toStepId: idOf(to),
      ...tie,
    },
  }));
  const washUp: Edit[] =
    add.washUpS === null
      ? []
      : [
          {
            op: 'update',
            entity: 'Segment',
            id: segmentId,
            rev: into.segmentRev,
            patch: { washUpS: add.washUpS },
          },
        ];
  const text = into.method ? [methodTextEdit(into.method)] : [];
  return { edits: [...steps, ...ties, ...washUp, ...text], firstId: idOf(add.steps[0]?.key ?? '') };
}
