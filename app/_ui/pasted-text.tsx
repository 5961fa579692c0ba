interface Props {
  /** For the button that copies it. */
  readonly id?: string;
  readonly text: string;
}

/** A text exactly as it is pasted elsewhere; printed without its frame. */
export function PastedText({ id, text }: Props) {
  return (
    <pre
      id={id}
      className="border border-line bg-raised px-4 py-3 font-sans text-fine wrap-anywhere whitespace-pre-wrap print:border-0 print:p-0"
    >
      {text}
    </pre>
  );
}
