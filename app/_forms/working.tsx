interface Props {
  readonly pending: boolean;
  /** What is being done: "Reading the texts …". */
  readonly words: string;
}

/** Says that a form that takes a moment is at work; its place is kept, so that nothing moves. */
export function Working({ pending, words }: Props) {
  return (
    <p role="status" className="min-h-6 text-soft">
      {pending ? words : ''}
    </p>
  );
}
