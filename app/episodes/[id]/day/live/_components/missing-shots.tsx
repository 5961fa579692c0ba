import { useEffect, useRef } from 'react';
import { Button } from '../../../../../_ui/button';
import type { LiveShot } from '../live-row';

interface Props {
  readonly title: string;
  readonly shots: readonly LiveShot[];
  readonly onTakeNow: () => void;
  readonly onWithout: () => void;
}

/** Before a plate is cut into or eaten: what nobody has on film yet. */
export function MissingShots({ title, shots, onTakeNow, onWithout }: Props) {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
  return (
    <section role="alert" className="mt-4 border-2 border-hand p-3">
      <h3 ref={head} tabIndex={-1} className="text-head text-hand">
        Not yet taken:
      </h3>
      <p className="text-soft">before {title}</p>
      <ul className="mb-3">
        {shots.map((shot) => (
          <li key={shot.id} className="text-lead font-semibold">
            {shot.title}
          </li>
        ))}
      </ul>
      <div className="grid gap-3">
        <Button type="button" tone="go" size="day" onClick={onTakeNow}>
          Take now
        </Button>
        <Button type="button" tone="hand" size="day" onClick={onWithout}>
          Do without<span className="unseen"> them, and go on with {title}</span>
        </Button>
      </div>
    </section>
  );
}
