export interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

export const NO_DAY = 'There is no filming day here.\n';
export const NO_CLOCK =
  'The takes have no timecodes yet: say on the page After the day what a picture of the clock shows.\n';
