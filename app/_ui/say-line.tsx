import { CopyButton } from './copy-button';

interface Props {
  /** Unique on the page. */
  readonly id: string;
  readonly text: string;
  /** What stands over it, as "Line to say". */
  readonly title?: string;
  /** What the button says. */
  readonly copy?: string;
}

/** The line to say: as large as it is read from a card beside the lens, in quotes, and ready to copy. */
export function SayLine({ id, text, title = 'Line to say', copy = 'Copy the line' }: Props) {
  return (
    <figure className="max-w-3xl">
      <figcaption className="lettering text-base text-soft">{title}</figcaption>
      <blockquote className="mt-1.5 text-say text-pretty">
        <span aria-hidden="true" className="quote-hang">
          “
        </span>
        <span id={id}>{text}</span>
        <span aria-hidden="true">”</span>
      </blockquote>
      <div className="mt-4">
        <CopyButton text={text} label={copy} shownIn={id} tone="plain" />
      </div>
    </figure>
  );
}
