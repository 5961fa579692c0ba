import { z } from 'zod';
import { RATE_KEEPS } from '#lib/cut/change-rate';
import { FRAME_RATE_IDS, frameRate } from '#lib/cut/timecode';
import { revision, rowId } from '../../../../_forms/fields';
import { whole } from '../../../../_forms/number-fields';

const episodeId = rowId;

/** The rate at which timecodes were shown and typed. */
const rate = z
  .enum(FRAME_RATE_IDS, { error: 'Choose how many frames a second the cut has.' })
  .transform(frameRate);

/** What stood on the page when the form was drawn: nothing else is changed. */
const shown = z.string().max(60_000).default('');

/** In- and out-points by segment, under `in-ID` and `out-ID`. */
export const pointsForm = z.looseObject({ episodeId, rate, shown });

export const rateForm = z.object({
  episodeId,
  rev: revision,
  rate,
  keeps: z
    .enum(['', ...RATE_KEEPS])
    .default('')
    .transform((kept) => kept || null),
});

/** Ticks under `take-ID`. */
export const captionsForm = z.looseObject({ episodeId, rate, textId: rowId, shown });

/** Far more than the reader takes, so that it can say its own limit. */
const LONGEST = 12_000_000;

/** An edit list; ticks under `take-ID` once it was read. */
export const listForm = z.looseObject({
  episodeId,
  rate,
  list: z.string().max(LONGEST, 'This is too long: give the list of one episode.').default(''),
  shown,
});

export const mendForm = z.object({ episodeId, words: z.string().min(1).max(1000) });

export const ownChapterForm = z.object({ episodeId, segmentId: rowId });

/** Limits of a person’s speaking rate, as the file has them. */
export const speakingForm = z.object({
  episodeId,
  perMinute: whole('how many words a minute you say', 40, 400),
});

export const forgetForm = z.object({ episodeId });

export type Sent = Readonly<Record<string, unknown>>;
