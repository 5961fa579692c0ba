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
 * seconds from its beginning. Chapters that are in no order are left out. Address and still are not known here.
 * @param published the day of publishing, where it is known and here
 */
export function videoData(file: EpisodeFile, published: string | null): VideoData {
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
      ...(published === null ? {} : { uploadDate: published }),
      ...(end === null || end <= 0 ? {} : { duration: isoDuration(end) }),
      ...(fault ? {} : { hasPart: clips }),
    },
    left: [
      leave('address and still', 'the place it is published at gives it both: add them there'),
      ...(episode.hook === '' ? [leave('description', 'no hook is written')] : []),
      ...(published === null ? [leave('day of publishing', notYet(file))] : []),
      ...(end === null ? [leave('length', 'the last segment has no end in the cut')] : []),
      ...(fault ? [leave('chapters', fault.message)] : []),
    ],
  };
}

function notYet({ episode }: EpisodeFile): string {
  return episode.publishOn === null ? 'no day is set' : `${episode.publishOn} is still to come`;
}
