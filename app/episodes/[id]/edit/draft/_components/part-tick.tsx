import { fieldId } from '../../../../../_ui/form/form-state';

interface Props {
  readonly form: string;
  readonly name: string;
  readonly kind: string;
  readonly words: string;
  /** What the dish has already in other words; null where it has nothing of the kind. */
  readonly has: string | null;
  /** Where it was read, and the words it was read from. */
  readonly from: string;
  readonly said: string;
  readonly ticked: boolean;
}

/** One thing that was read and is offered, with its tick and the place it comes from. */
export function PartTick({ form, name, kind, words, has, from, said, ticked }: Props) {
  const id = fieldId(form, name);
  return (
    <div className="flex min-h-11 items-start gap-3 border-b border-line py-2">
      <input
        key={String(ticked)}
        id={id}
        name={name}
        type="checkbox"
        className="mt-0.5 size-5 shrink-0 accent-ink"
        aria-describedby={`${id}-from`}
        defaultChecked={ticked}
      />
      <div className="min-w-0">
        <label htmlFor={id} className="block whitespace-pre-line wrap-anywhere">
          {words}
        </label>
        <p id={`${id}-from`} className="text-fine text-soft wrap-anywhere">
          {kind}, {from}
          {said !== '' && !said.includes(words) && `: “${said}”`}
          {has !== null && `. The dish has “${has}” already: tick this only if it is more of it.`}
        </p>
      </div>
    </div>
  );
}
