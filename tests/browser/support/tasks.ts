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

/** Adds axe to the page and returns what it finds wrong, in short. */
export async function axeViolations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: { run: () => Promise<AxeResult> } };
    const { violations } = await axe.run();
    return violations.map(
      ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map((node) => node.target.join(' ')).join(' | ')}`,
    );
  });
}

interface AxeResult {
  readonly violations: readonly { id: string; help: string; nodes: readonly { target: string[] }[] }[];
}
