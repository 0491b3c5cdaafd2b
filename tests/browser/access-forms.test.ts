import { describe, expect, it } from 'vitest';
import { useBrowser } from './support/browser.ts';
import { openShortJob } from './support/short-job.ts';
import { axeEverywhere, go, unfold } from './support/tasks.ts';

const bench = useBrowser();

describe('axe finds nothing, at the size of a desk and of a phone, light and dark,', () => {
  it('on every measurement form', async () => {
    const { page } = await bench.open();
    await openShortJob(page, 'joint-replaced');
    await go(page, 'measurements');
    const forms = page.locator('nav a[href*="measurements/"]');
    await forms.first().waitFor();
    const hashes = await forms.evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''));
    expect(hashes.length).toBe(12);
    for (const hash of hashes) {
      await go(page, hash);
      await unfold(page);
      expect(await axeEverywhere(page, hash)).toEqual([]);
    }
  });

  it('on all lessons, the words and the recording screen', async () => {
    const { page } = await bench.open({ hash: '#lessons' });
    const addresses = page.locator('main a[href^="#lessons/"]');
    await addresses.first().waitFor();
    const hashes = await addresses.evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''));
    expect(hashes.length).toBeGreaterThan(7);
    for (const hash of ['lessons', ...hashes, 'road-test/record']) {
      await go(page, hash);
      await unfold(page);
      expect(await axeEverywhere(page, hash)).toEqual([]);
    }
  });
});
