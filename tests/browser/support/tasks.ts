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

/** Runs axe on the page as it stands and returns what it finds wrong, in short. */
export async function axeViolations(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: { run: (options: object) => Promise<AxeResult> } };
    const { violations } = await axe.run({ resultTypes: ['violations'] });
    return violations.map(
      ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map((node) => node.target.join(' ')).join(' | ')}`,
    );
  });
}

/** Colors and layout are chosen apart from each other, so that two looks see both of each. */
const LOOKS = [
  { size: 'desk', viewport: { width: 1440, height: 900 }, colorScheme: 'light' },
  { size: 'phone', viewport: { width: 390, height: 844 }, colorScheme: 'dark' },
] as const;

/** By how many pixels the screen is wider than the window: what is wider must be scrolled sideways. */
export const overflowPx = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

/**
 * What is wrong with the screen that is shown, on a desk in light and on a phone in dark: what axe finds, and what is
 * wider than the window.
 */
export async function axeEverywhere(page: Page, screen: string): Promise<string[]> {
  const wrong: string[] = [];
  for (const { size, viewport, colorScheme } of LOOKS) {
    await page.setViewportSize(viewport);
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    // Paper is white whatever the device says.
    await page.waitForFunction(
      (scheme) => document.documentElement.dataset.theme === scheme || document.querySelector('.paper') !== null,
      colorScheme,
    );
    // Pictures take their width from their place a frame later.
    const fits = page
      .waitForFunction(() => document.documentElement.scrollWidth <= innerWidth, null, { timeout: 3000 })
      .then(
        () => true,
        () => false,
      );
    if (!(await fits)) wrong.push(`${screen}, ${size}: ${await overflowPx(page)} px wider than the window`);
    let found = await axeViolations(page);
    // Colors change over to another scheme within a moment; what is wrong is wrong after it, too.
    if (found.length > 0) {
      await page.waitForTimeout(600);
      found = await axeViolations(page);
    }
    wrong.push(...found.map((violation) => `${screen}, ${size}, ${colorScheme}: ${violation}`));
  }
  return wrong;
}

interface AxeResult {
  readonly violations: readonly { id: string; help: string; nodes: readonly { target: string[] }[] }[];
}
