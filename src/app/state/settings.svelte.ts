/** The reader's choices, kept between visits. */
import type { UnitSystem } from '../../core/report/format.ts';
import { route } from './route.svelte.ts';

export type Theme = 'auto' | 'light' | 'dark';
export type Size = 'normal' | 'large';

interface Stored {
  readonly theme: Theme;
  readonly units: UnitSystem;
  readonly size: Size;
}

const KEY = 'perrev-settings';

/** Miles are driven in by these; everyone else reads kilometers. */
const US_REGIONS = new Set(['US', 'LR', 'MM', 'GB']);

class Settings {
  theme = $state<Theme>('auto');
  units = $state<UnitSystem>('us');
  size = $state<Size>('normal');
  deviceDark = $state(false);
  /** Type size against the normal one, as in styles/tokens.css. */
  readonly typeScale = $derived(this.size === 'large' ? 1.33 : 1);
  /** The browser itself is putting the screen on paper. */
  onPaper = $state(false);
  readonly dark = $derived(
    !this.onPaper && route.printing === null && (this.theme === 'dark' || (this.theme === 'auto' && this.deviceDark)),
  );

  constructor() {
    const stored = read();
    this.theme = stored.theme ?? 'auto';
    this.units = stored.units ?? unitsOf(navigator.language);
    this.size = stored.size ?? 'normal';
    const media = matchMedia('(prefers-color-scheme: dark)');
    this.deviceDark = media.matches;
    media.addEventListener('change', (event) => (this.deviceDark = event.matches));
  }

  /** Puts the choices on the page and keeps them. Called from an effect. */
  apply(): void {
    document.documentElement.dataset.theme = this.dark ? 'dark' : 'light';
    document.documentElement.dataset.size = this.size;
    const stored: Stored = { theme: this.theme, units: this.units, size: this.size };
    try {
      localStorage.setItem(KEY, JSON.stringify(stored));
    } catch {
      // A full or forbidden store costs only the memory of these choices.
    }
  }
}

function unitsOf(language: string): UnitSystem {
  return US_REGIONS.has(new Intl.Locale(language).maximize().region ?? '') ? 'us' : 'metric';
}

function read(): Partial<Stored> {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Stored>;
  } catch {
    return {};
  }
}

export const settings = new Settings();
