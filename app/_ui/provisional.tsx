import type { ReactNode } from 'react';

/** What every provisional value says, and the class of the hatch that stands behind it. */
export const NOT_CONFIRMED = 'not confirmed';
export const PROVISIONAL = 'provisional';

interface Props {
  /** Why it is provisional; that its food is not confirmed if left out. */
  readonly words?: string;
  /** What waits for the person's word, beside the words themselves: "barley: 1 of 3 foods". */
  readonly what?: ReactNode;
  /** `inline` within a line of text; else around a figure or another block. */
  readonly inline?: boolean;
  readonly children: ReactNode;
}

/**
 * A value that counts on the page and is left out of what is copied or said until the person confirms it, or types
 * what a photo shows: hairlines behind it, and the words. A table's row takes the hatch by `<Tr provisional>`.
 */
export function Provisional({ words = NOT_CONFIRMED, what, inline = false, children }: Props) {
  if (inline) {
    return (
      <span className={`${PROVISIONAL} px-1`}>
        {children}
        <span className="unseen">, {words}</span>
      </span>
    );
  }
  return (
    <span className="block">
      <span className={`${PROVISIONAL} -mx-1.5 block px-1.5`}>{children}</span>
      <NotConfirmed words={words} what={what} />
    </span>
  );
}

/** The words alone, for a row whose hatch stands behind all of it. */
export function NotConfirmed({ words = NOT_CONFIRMED, what }: Pick<Props, 'words' | 'what'>) {
  return (
    <span className="mt-0.5 block text-fine">
      <b className="font-semibold">{words}</b>
      {what && <>: {what}</>}
    </span>
  );
}
