/** Something of the episode that is not in its structured data, and why, in words for the person. */
export interface LeftOfData {
  /** The dish that it is of, to be linked; null for the video. */
  readonly segmentId: string | null;
  readonly dish: string;
  readonly what: string;
  readonly why: string;
}
