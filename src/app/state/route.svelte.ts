/** Which screen is shown. Kept in the address after '#', so that back, forward and reload work. */
import { texts } from '../texts.ts';

const SCREENS = ['road-test', 'measurements', 'before-and-after', 'lessons', 'job-book'] as const;
export type Screen = (typeof SCREENS)[number];

export const screenTitles: Readonly<Record<Screen, string>> = {
  'road-test': texts.frame.roadTest,
  measurements: texts.frame.measurements,
  'before-and-after': texts.frame.beforeAndAfter,
  lessons: texts.frame.lessons,
  'job-book': texts.frame.jobBook,
};

/** The screen of an address such as '#lessons/one-joint': its first word. */
function screenOf(hash: string): Screen {
  const [word] = hash.replace(/^#\/?/, '').split('/');
  return SCREENS.find((screen) => screen === word) ?? 'road-test';
}

/** What is put on paper: one page for the customer, or all pages for the file. */
export type Paper = 'customer' | 'file';

const PAPER = /\?print=(customer|file)$/u;

/** The paper of an address such as '#road-test?print=file': each screen has its own place for it. */
function paperOf(hash: string): Paper | null {
  const [, paper] = PAPER.exec(hash) ?? [];
  return (paper as Paper | undefined) ?? null;
}

const withoutPaper = (hash: string): string => hash.replace(PAPER, '');

class Route {
  screen = $state<Screen>('road-test');
  /** What follows the screen in the address: 'one-joint' of '#lessons/one-joint'. */
  rest = $state('');
  printing = $state<Paper | null>(null);

  constructor() {
    this.#follow();
    addEventListener('hashchange', () => this.#follow());
  }

  go(screen: Screen): void {
    location.hash = screen;
  }

  print(paper: Paper): void {
    history.pushState({ isPaper: true }, '', `${withoutPaper(location.hash) || '#'}?print=${paper}`);
    this.#follow();
  }

  /** Back to the screen the paper was asked for on. */
  leavePaper(): void {
    if ((history.state as { readonly isPaper?: boolean } | null)?.isPaper) history.back();
    else location.replace(withoutPaper(location.hash));
  }

  #follow(): void {
    const screen = withoutPaper(location.hash);
    this.screen = screenOf(screen);
    this.rest = restOf(screen);
    this.printing = paperOf(location.hash);
  }
}

function restOf(hash: string): string {
  return hash.replace(/^#\/?/, '').split('/').slice(1).join('/');
}

export const route = new Route();
