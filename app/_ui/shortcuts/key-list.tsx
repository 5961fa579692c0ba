import type { Shortcut } from './keys';

/** The keys and what each does. */
export function KeyList({ shortcuts }: { readonly shortcuts: readonly Shortcut[] }) {
  return (
    <dl className="mt-3">
      {shortcuts.map(({ keys, words }) => (
        <div key={words} className="flex justify-between border-b border-line py-1.5">
          <dt>{words}</dt>
          <dd>
            {keys.map((key) => (
              <kbd key={key} className="ml-1.5 border border-edge bg-raised px-2 font-sans">
                {key}
              </kbd>
            ))}
          </dd>
        </div>
      ))}
    </dl>
  );
}
