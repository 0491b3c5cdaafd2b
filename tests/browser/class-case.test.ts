import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { useBrowser } from './support/browser.ts';
import { axeViolations, go } from './support/tasks.ts';

const bench = useBrowser();

describe('a faulty vehicle', () => {
  it('is built without a frozen page, handed out, opened as a road test, and revealed', async () => {
    const { page, complaints } = await bench.open({ hash: '#lessons/build-a-fault' });
    await page.getByRole('combobox', { name: 'Fault' }).selectOption('Driveshaft out of balance');
    await page.getByRole('button', { name: 'Make the recording' }).click();
    expect(await page.getByRole('textbox', { name: /locks/u }).getAttribute('aria-invalid')).toBe('true');
    await page.getByRole('textbox', { name: /locks/u }).fill('ripple');
    await page.evaluate(() => {
      const seen = { longest: 0 };
      (globalThis as unknown as { seen: typeof seen }).seen = seen;
      let last = performance.now();
      const tick = (): void => {
        seen.longest = Math.max(seen.longest, performance.now() - last);
        last = performance.now();
        setTimeout(tick, 10);
      };
      tick();
    });
    await page.getByRole('button', { name: 'Make the recording' }).click();
    await page.getByText(/^Ready: class-\d{5}\.csv/u).waitFor();
    // The class sees the screen: neither the word nor the fault is left on it.
    expect(await page.getByRole('textbox', { name: /locks/u }).inputValue()).toBe('');
    const longest = await page.evaluate(() => (globalThis as unknown as { seen: { longest: number } }).seen.longest);
    expect(longest).toBeLessThan(250);
    const saved = async (button: string): Promise<{ name: string; text: string }> => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: button }).click(),
      ]);
      return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
    };
    const recording = await saved('Save recording');
    expect(recording.name).toMatch(/^class-\d{5}\.csv$/u);
    expect(recording.text).toMatch(/^time_s,accel_x_mps2/u);
    expect((await saved('Save job file')).text).not.toMatch(/unbalance|fault/iu);
    const answer = await saved('Save sealed answer');
    expect(answer.text).not.toMatch(/driveshaft/iu);

    const reveal = page.getByRole('button', { name: 'Reveal' });
    await page
      .getByLabel('Sealed answer')
      .setInputFiles({ name: answer.name, mimeType: 'application/json', buffer: Buffer.from(answer.text) });
    await page.getByLabel('Its word').fill('other');
    await reveal.click();
    await page.getByText(/does not open this answer/u).waitFor();
    await page.getByLabel('Its word').fill('ripple');
    await reveal.click();
    await page.getByRole('cell', { name: 'Driveshaft out of balance' }).waitFor();
    expect(await axeViolations(page)).toEqual([]);

    // Without the sealed answer a recording handed out is lost: it outlives the screen, and says when it is of before.
    await go(page, 'lessons');
    await go(page, 'lessons/build-a-fault');
    await page.getByText(`Ready: ${recording.name}`).waitFor();
    expect(await page.getByRole('combobox', { name: 'Fault' }).inputValue()).toBe('chance');
    expect((await saved('Save sealed answer')).text).toBe(answer.text);
    const former = page.getByText('These files belong to the settings and the word before the change');
    expect(await former.count()).toBe(0);
    await page.getByRole('combobox', { name: 'Fault' }).selectOption('Tire out of balance');
    await former.waitFor();
    expect(await axeViolations(page)).toEqual([]);
    await page.getByRole('combobox', { name: 'Fault' }).selectOption('Let chance choose');
    await former.waitFor({ state: 'detached' });
    await page.getByRole('textbox', { name: /locks/u }).fill('another');
    await former.waitFor();

    await page.getByRole('button', { name: 'Open here as a road test' }).click();
    await page.getByText('40 s ·').waitFor();
    await page.getByRole('button', { name: 'Diagnose' }).click();
    await page.locator('#answer').waitFor({ timeout: 50_000 });
    expect(await page.locator('#answer').textContent()).toMatch(/driveshaft 1×/iu);
    expect(complaints).toEqual([]);
  });
});
