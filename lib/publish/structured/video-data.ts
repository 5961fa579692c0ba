import type { Clip, VideoObject } from 'schema-dts';
import { chapterList, cutEndS } from '#lib/cut/chapters';
import type { EpisodeFile } from '#lib/episode/schema';
import type { LeftOfData } from '#lib/publish/structured/left-of-data';
import { isoDuration } from '#lib/units/iso-duration';

/** The episode as a VideoObject, and what of it is left out. */
export interface VideoData {
  readonly video: VideoObject;
  readonly left: readonly LeftOfData[];
}

/** The video's node within the data, for what refers to it. */
export const VIDEO_NODE = '#video';

/**
 * The episode as a VideoObject of schema.org 30.0 with its chapters as Clips: `startOffset` and `endOffset` in whole
 * seconds from its beginning. Chapters that are in no order are left out. Address, still and the day
 * on which it went out are known where it is published, and not here: what an episode says of a day is a plan.
 */
export function videoData(file: EpisodeFile): VideoData {
  const { episode } = file;
  const { chapters, faults } = chapterList(episode);
  const inOrder = faults.filter(({ rule }) => rule === 'noTimes' || rule === 'ascending');
  const end = cutEndS(episode);
  const clips = chapters.map(({ title, startS, endS }, at): Clip => {
    const until = chapters[at + 1]?.startS ?? endS;
    return {
      '@type': 'Clip',
      name: title,
      startOffset: startS,
      ...(until === undefined || until <= startS ? {} : { endOffset: until }),
    };
  });
  const leave = (what: string, why: string): LeftOfData => {
    return { segmentId: null, dish: 'The video', what, why };
  };
  const [fault] = inOrder;
  return {
    video: {
      '@type': 'VideoObject',
      '@id': VIDEO_NODE,
      name: episode.title,
      ...(episode.hook === '' ? {} : { description: episode.hook }),
      ...(end === null || end <= 0 ? {} : { duration: isoDuration(end) }),
      ...(fault ? {} : { hasPart: clips }),
    },
    left: [
      leave('address and still', 'the place it is published at gives it both: add them there'),
      ...(episode.hook === '' ? [leave('description', 'no hook is written')] : []),
      leave('day of publishing', whyNoDay(episode.publishOn)),
      ...(end === null ? [leave('length', 'the last segment has no end in the cut')] : []),
      ...(fault ? [leave('chapters', fault.message)] : []),
    ],
  };
}

function whyNoDay(publishOn: string | null): string {
  const known = 'the place it is published at knows it: add it there';
  return publishOn === null ? known : `planned for ${publishOn}; ${known}`;
}
