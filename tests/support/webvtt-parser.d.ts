/** W3C's parser of WebVTT carries no types. */
declare module 'webvtt-parser' {
  interface WebVttCue {
    readonly id: string;
    readonly startTime: number;
    readonly endTime: number;
    readonly text: string;
  }
  interface Parser {
    parse(text: string, mode: 'metadata'): { readonly cues: WebVttCue[] };
  }
  const parsers: { readonly WebVTTParser: new () => Parser };
  export type { WebVttCue };
  export default parsers;
}
