import type { NextAction } from '#lib/shoot/lot-actions';

interface Props {
  readonly actions: readonly NextAction[];
}

/** What is to be chilled or thrown away, as long as that is so. */
export function LotActions({ actions }: Props) {
  return (
    <div role="alert">
      {actions.map(({ text, source }) => (
        <p key={text} className="mb-4 border-2 border-hand bg-raised p-3 text-lead">
          <b className="font-semibold text-hand">{text}</b>
          {source !== null && (
            <span className="block text-fine text-soft">
              {source}. Follow your local code and what a licensed practitioner says.
            </span>
          )}
        </p>
      ))}
    </div>
  );
}
