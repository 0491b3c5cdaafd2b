/** What a reader does, as steps that tests share. */
import axe from 'axe-core';
import type { Page } from 'playwright-core';

const RECORDINGS = new URL('../../../recordings/', import.meta.url).pathname;

export const recordingPath = (name: string): string => RECORDINGS + name;

/** Opens a demo job by its title and waits for the answer. */
export async function openDemo(page: Page, title: RegExp): Promise<void> {
  await page.getByRole('button', { name: title }).click();
  await waitForAnswer(page);
}

export async function waitForAnswer(page: Page): Promise<void> {
  await page.locator('#answer').waitFor();
}

export async function openRecordings(page: Page, ...names: string[]): Promise<void> {
  await page.setInputFiles('input[type=file]', names.map(recordingPath));
}

/** Every part that can be folded is unfolded, so that what is in it is looked at too. */
export const unfold = (page: Page): Promise<void> =>
  page.evaluate(() => document.querySelectorAll('main details').forEach((part) => part.setAttribute('open', '')));

/** Goes to a screen by its address, on the page that is open. */
export async function go(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => (location.hash = to), hash);
  await page.locator('main h1').first().waitFor();
}

/** Rules whose outcome another color scheme may change. */
const OF_COLOR = ['color-contrast', 'link-in-text-block'];

/** Runs axe on the page as it stands, all rules or those named, and returns what it finds wrong, in short. */
export async function axeViolations(page: Page, rules?: readonly string[]): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
  return page.evaluate(async (only) => {
    const { axe } = globalThis as unknown as { axe: { run: (options: object) => Promise<AxeResult> } };
    const { violations } = await axe.run({ resultTypes: ['violations'], ...(only && { runOnly: only }) });
    return violations.map(
      ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map((node) => node.target.join(' ')).join(' | ')}`,
    );
  }, rules);
}

const SIZES = { desk: { width: 1440, height: 900 }, phone: { width: 390, height: 844 } } as const;

/** What axe finds wrong with the screen that is shown, at the size of a desk and of a phone, light and dark. */
export async function axeEverywhere(page: Page, screen: string): Promise<string[]> {
  const wrong: string[] = [];
  for (const [size, viewport] of Object.entries(SIZES)) {
    await page.setViewportSize(viewport);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      // Paper is white whatever the device says.
      await page.waitForFunction(
        (scheme) => document.documentElement.dataset.theme === scheme || document.querySelector('.paper') !== null,
        colorScheme,
      );
      const rules = colorScheme === 'dark' ? OF_COLOR : undefined;
      let found = await axeViolations(page, rules);
      // Colors change over to another scheme within a moment; what is wrong is wrong after it, too.
      if (found.length > 0) {
        await page.waitForTimeout(600);
        found = await axeViolations(page, rules);
      }
      wrong.push(...found.map((violation) => `${screen}, ${size}, ${colorScheme}: ${violation}`));
    }
  }
  return wrong;
}

interface AxeResult {
  readonly violations: readonly { id: string; help: string; nodes: readonly { target: string[] }[] }[];
}
