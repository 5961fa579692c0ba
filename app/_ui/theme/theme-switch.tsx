import { setTheme } from './actions';
import { THEMES, type Theme } from './theme';

const WORDS: Record<Theme, string> = {
  device: 'as the device',
  day: 'day',
  night: 'kitchen night',
};

/** Three plain buttons in a form, so that it works before any script has loaded. */
export function ThemeSwitch({
  theme,
  id = 'theme',
}: {
  readonly theme: Theme;
  /** Unique where more than one stands on a page. */
  readonly id?: string;
}) {
  return (
    <form action={setTheme} className="flex flex-wrap items-center gap-x-4">
      <span id={`${id}-words`} className="text-soft">
        Light
      </span>
      <div role="group" aria-labelledby={`${id}-words`} className="flex flex-wrap gap-x-1">
        {THEMES.map((choice) => (
          <button
            key={choice}
            name="theme"
            value={choice}
            aria-pressed={choice === theme}
            className="min-h-11 border-b-2 border-transparent px-2 aria-pressed:border-ink aria-pressed:font-semibold hover:border-edge"
          >
            {WORDS[choice]}
          </button>
        ))}
      </div>
    </form>
  );
}
