/** A piece of an edit, from its frame on the timeline to the first frame after it; frames are of the list's rate. */
export interface EditPiece {
  /** The clip's name where the list has one, else its reel. */
  readonly name: string;
  /** Counted from the beginning of the timeline. */
  readonly fromFrame: number;
  readonly toFrame: number;
  /** What the clip is taken from, in its own frames; null where the list does not say. */
  readonly sourceFrom: number | null;
  /** How fast the clip runs, where the list says so: 1 as it was filmed, 2 twice as fast, 0 a held frame. */
  readonly speed: number;
  readonly transition: 'cut' | 'dissolve' | 'wipe' | 'key';
  /** Where it stands in the file: a line, or the place in the track, counted from 1. */
  readonly at: number;
}

export interface EditRemark {
  readonly at: number;
  readonly code:
    'event' | 'timecode' | 'speed' | 'length' | 'gap' | 'overlap' | 'reel' | 'rate' | 'track';
  readonly message: string;
  readonly skipped: boolean;
}

/** The picture of an edit: its pieces in order, and what was left out or is odd. */
export interface EditList {
  readonly title: string;
  readonly pieces: readonly EditPiece[];
  readonly remarks: readonly EditRemark[];
}

/** Pieces in the order of the timeline, with remarks where nothing stands between two, or one covers another. */
export function inTimelineOrder(
  title: string,
  found: readonly EditPiece[],
  remarks: readonly EditRemark[],
): EditList {
  const pieces = [...found].sort((a, b) => a.fromFrame - b.fromFrame || a.at - b.at);
  const between = pieces.flatMap((piece, index): EditRemark[] => {
    const before = pieces[index - 1];
    if (before === undefined || piece.fromFrame === before.toFrame) return [];
    const of = { at: piece.at, skipped: false };
    const gap = piece.fromFrame - before.toFrame;
    return gap > 0
      ? [{ ...of, code: 'gap', message: `${gap} frames before “${piece.name}” are empty.` }]
      : [
          {
            ...of,
            code: 'overlap',
            message: `“${piece.name}” begins ${-gap} frames before “${before.name}” is over.`,
          },
        ];
  });
  return { title, pieces, remarks: [...remarks, ...between].sort((a, b) => a.at - b.at) };
}
