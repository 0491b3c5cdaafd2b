/** Which screen is shown. Kept in the address after '#', so that back, forward and reload work. */
import { texts } from '../texts.ts';

export const SCREENS = ['road-test', 'measurements', 'before-and-after', 'lessons', 'job-book'] as const;
export type Screen = (typeof SCREENS)[number];

export const screenTitles: Readonly<Record<Screen, string>> = {
  'road-test': texts.frame.roadTest,
  measurements: texts.frame.measurements,
  'before-and-after': texts.frame.beforeAndAfter,
  lessons: texts.frame.lessons,
  'job-book': texts.frame.jobBook,
};

/** The screen of an address such as '#lessons/one-joint': its first word. */
export function screenOf(hash: string): Screen {
  const [word] = hash.replace(/^#\/?/, '').split('/');
  return SCREENS.find((screen) => screen === word) ?? 'road-test';
}

class Route {
  screen = $state<Screen>(screenOf(location.hash));
  /** What follows the screen in the address: 'one-joint' of '#lessons/one-joint'. */
  rest = $state(restOf(location.hash));

  constructor() {
    addEventListener('hashchange', () => {
      this.screen = screenOf(location.hash);
      this.rest = restOf(location.hash);
    });
  }

  go(screen: Screen): void {
    location.hash = screen;
  }
}

function restOf(hash: string): string {
  return hash.replace(/^#\/?/, '').split('/').slice(1).join('/');
}

export const route = new Route();
