import { z } from 'zod';
import {
  editTextSchema,
  mendSchema,
  namedFoodSchema,
  readingMendSchema,
} from '#lib/episode/edit-schema';
import { id, position } from '#lib/store/rows-basic';

const text = editTextSchema.shape;
const mend = readingMendSchema.shape;
const named = namedFoodSchema.shape;
const [, heardMend, aboutMend] = mendSchema.options;
const about = aboutMend.shape;

/** The tables of an episode's edit, column by column, without the columns that every row has. */
export const EDIT_ROWS = {
  EditText: z.strictObject({
    id,
    episodeId: id,
    position,
    kind: text.kind,
    name: text.name,
    text: text.text,
  }),
  ReadingMend: z
    .strictObject({
      id,
      episodeId: id,
      textId: mend.textId,
      words: mend.words,
      before: mend.before,
      after: mend.after,
      kind: z.enum(['nothing', 'heard', 'about']),
      heard: heardMend.shape.text.nullable().default(null),
      segmentId: about.segmentId.default(null),
      portionId: about.portionId.default(null),
      scope: about.scope.nullable().default(null),
    })
    .refine(
      (row) =>
        (row.kind === 'heard') === (row.heard !== null) &&
        (row.kind === 'about') === (row.scope !== null) &&
        (row.kind === 'about' || row.segmentId === null) &&
        (row.segmentId !== null || row.portionId === null),
      {
        path: ['kind'],
        message: 'words mean no number, or what was heard instead, or a number of something',
      },
    ),
  NamedFood: z.strictObject({ id, episodeId: id, food: named.food, answer: named.answer }),
} as const;
