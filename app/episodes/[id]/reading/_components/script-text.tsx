import type { Ref } from 'react';
import type { ScriptItem } from '#lib/overview/reading-script';

interface Props {
  readonly item: ScriptItem;
  /** It is the one that is read. */
  readonly here: boolean;
  readonly ref?: Ref<HTMLLIElement>;
}

/** A sentence, or a shot at which the reading stops. */
export function ScriptText({ item, here, ref }: Props) {
  return (
    <li
      ref={ref}
      aria-current={here ? 'true' : undefined}
      className="border-l-4 border-transparent py-[0.35em] pl-[0.4em] aria-[current]:border-hand print:border-0 print:pl-0 print:text-base"
    >
      {item.heading !== null && (
        <p className="lettering text-[max(0.45em,0.875rem)] text-soft uppercase print:text-fine">
          {item.heading}
        </p>
      )}
      {item.kind === 'stop' ? (
        <p className="border-y-2 border-dashed border-edge py-[0.2em] font-slate text-[max(0.7em,1.0625rem)] leading-tight print:text-base">
          Shot: {item.title}
          {item.framing !== '' && <span className="text-soft"> ({item.framing})</span>}
        </p>
      ) : (
        <p className="leading-snug">
          {item.parts.map(({ text, open }, at) =>
            open ? (
              <span key={at} className="hatch px-[0.15em]">
                {text}
              </span>
            ) : (
              text
            ),
          )}
        </p>
      )}
    </li>
  );
}
