/** Words on the picture from a time to another, as a caption file has them. */
export interface Cue {
  readonly kind: 'cue';
  /** Its identifier (WebVTT) or number (SubRip) as written; empty where it has none. */
  readonly name: string;
  readonly startMs: number;
  readonly endMs: number;
  /** What stands behind the times: settings in WebVTT, coordinates in some SubRip files; else empty. */
  readonly settings: string;
  /** Its lines as written, with tags and character references. */
  readonly text: string;
  /** Where its times stand in the file, counted from 1. */
  readonly line: number;
}

/** What a WebVTT file carries beside its cues; `text` is all of the block as written. */
export interface Aside {
  readonly kind: 'note' | 'style' | 'region';
  readonly text: string;
  readonly line: number;
}

/** Something about a caption file that its reader should know, by the file's line. */
export interface CaptionRemark {
  readonly line: number;
  readonly code:
    | 'encoding'
    | 'signature'
    | 'times'
    | 'backwards'
    | 'overlap'
    | 'number'
    | 'order'
    | 'block'
    | 'empty';
  readonly message: string;
  /** Whether what stands there was left out. */
  readonly skipped: boolean;
}

/** A caption file with all that its format carries: written again, it says the same. */
export interface Captions {
  readonly format: 'webvtt' | 'subrip';
  /** WebVTT: what stands behind the signature, and the header lines under it. */
  readonly head: string;
  readonly blocks: readonly (Cue | Aside)[];
  readonly remarks: readonly CaptionRemark[];
}

/** The cues of a file, in the file's order. */
export function cuesOf({ blocks }: Pick<Captions, 'blocks'>): Cue[] {
  return blocks.filter((block) => block.kind === 'cue');
}

/** What a reader of cues says of one against the one before; none of it leaves a word out. */
export function remarksOfTimes(cues: readonly Cue[]): CaptionRemark[] {
  return cues.flatMap((cue, index): CaptionRemark[] => {
    const before = cues[index - 1];
    const of = { line: cue.line, skipped: false };
    if (before && cue.startMs < before.startMs) {
      return [{ ...of, code: 'order', message: 'It begins before the one above it.' }];
    }
    if (before && cue.startMs < before.endMs) {
      return [{ ...of, code: 'overlap', message: 'It begins before the one above it is over.' }];
    }
    return [];
  });
}
