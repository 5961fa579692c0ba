import { Button } from '../../../../../_ui/button';

interface Props {
  readonly onKey: (key: string) => void;
  readonly onBack: () => void;
}

const KEYS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '.', '0'] as const;

/** Keys for one thumb. The field above takes a keyboard as well. */
export function Keypad({ onKey, onBack }: Props) {
  return (
    <div role="group" aria-label="Keypad" className="grid grid-cols-3 gap-2 [&>button]:min-h-16">
      {KEYS.map((key) => (
        <Button key={key} type="button" size="day" onClick={() => onKey(key)}>
          {key === '.' ? (
            <>
              <span aria-hidden="true">.</span>
              <span className="unseen">point</span>
            </>
          ) : (
            key
          )}
        </Button>
      ))}
      <Button type="button" size="day" onClick={onBack}>
        <span aria-hidden="true">⌫</span>
        <span className="unseen">Take the last digit away</span>
      </Button>
    </div>
  );
}

/** What stands on the display after a key: never two points, no more digits than a scale has. */
export function afterKey(digits: string, key: string): string {
  if (key === '.' && digits.includes('.')) return digits;
  if (digits.length >= 9) return digits;
  if (digits === '0' && key !== '.') return key;
  return digits === '' && key === '.' ? '0.' : digits + key;
}
