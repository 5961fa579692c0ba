import { useState } from 'react';
import { Button, ButtonLink } from '../../../../_ui/button';
import { CONTROL } from '../../../../_ui/form/field';
import { readListCode } from '#lib/shopping/list-code';

interface Props {
  /** Where the list stands as a file. */
  readonly href: string;
  /** The list's foods in the order of its code. */
  readonly foods: readonly string[];
  /** Ticks what is not ticked yet, and says how that went. */
  readonly onTicked: (foodIds: readonly string[]) => string;
}

/** A copy of the list that works without the program, and the way back of its ticks. */
export function CarryPart({ href, foods, onTicked }: Props) {
  const [text, setText] = useState('');
  const [fault, setFault] = useState('');
  const [said, setSaid] = useState('');
  const read = () => {
    const code = readListCode(text, foods);
    setFault(code.ok ? '' : code.message);
    setSaid(code.ok ? onTicked(code.ticked) : '');
    if (code.ok) setText('');
  };
  return (
    <section aria-labelledby="carry" className="mt-8 print:hidden">
      <h2 id="carry">To carry along</h2>
      <p className="mt-1 max-w-[60ch]">
        One file that opens on any phone without the program and without signal. What is ticked in
        it comes back by a short code.
      </p>
      <div className="mt-2">
        <ButtonLink href={href} download>
          The list as a file
        </ButtonLink>
      </div>
      <form
        className="mt-4 grid max-w-xl gap-2"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          read();
        }}
      >
        <label htmlFor="list-code" className="font-semibold">
          Code from the file
        </label>
        <input
          id="list-code"
          className={`${CONTROL} min-h-14`}
          value={text}
          autoComplete="off"
          autoCapitalize="characters"
          spellCheck={false}
          aria-invalid={fault === '' ? undefined : true}
          aria-describedby="list-code-said"
          onChange={(event) => setText(event.currentTarget.value)}
        />
        <p id="list-code-said" role="status" className={fault ? 'font-semibold text-hand' : ''}>
          {fault || said}
        </p>
        <div>
          <Button>Bring the ticks back</Button>
        </div>
      </form>
    </section>
  );
}
