import { scaleLinear } from 'd3';
import { describe, expect, it } from 'vitest';
import { levelsOverTime } from '../../src/app/charts/levels-over-time.ts';
import { trackPath } from '../../src/app/charts/tracks.ts';
import { orderCells } from '../../src/app/sheet/order-cells.ts';
import { analyse } from '../../src/core/analyse.ts';
import { orderWords } from '../../src/core/report/order-words.ts';
import {
  FIRING,
  FIRING_LABEL,
  FIRING_MPS2,
  foldedJob,
  foldedRecording,
  IMAGE_HZ,
  WHEEL_HZ,
} from '../support/folded-firing.ts';
import { drivenAt } from '../support/orders.ts';
import { must } from '../support/must.ts';

describe('an order seen only by its image', () => {
  const analysis = must(analyse(foldedJob, [foldedRecording()]));
  const { report, pictures } = analysis;
  const [picture] = pictures;
  const firing = report.orders.find(({ label }) => label === FIRING_LABEL)!;

  it('has the level of the image in the table of orders, and is told as seen by it', () => {
    expect(firing.visibility).toBe('above-nyquist');
    expect(firing.amplitudeMps2).toBeCloseTo(FIRING_MPS2, 1);
    expect(firing.aliasHz).toBeCloseTo(IMAGE_HZ, 1);
    const { seen, level } = orderCells(firing, 'metric');
    expect(seen).toBe(true);
    expect(level).toMatch(/^0\.60\sm\/s² \(61\smg\), by its image at 24\.[34]\sHz$/u);
    expect(orderWords(firing).state).toMatch(/^above half the rate, seen by its image at 24\.[34]\sHz$/u);
  });

  it('is drawn over the map where the image runs: down while the speed rises', () => {
    const line = picture!.lines.find(({ label }) => label === FIRING_LABEL)!;
    // One pixel a hundredth of a hertz across, one a second down.
    const x = scaleLinear([0, 50], [0, 5000]);
    const time = scaleLinear([0, 60], [0, 60]);
    const points = trackPath(line, picture!, x, time)
      .slice(1)
      .split('L')
      .map((point) => point.split(',').map(Number) as [number, number]);
    const off = points.map(([px, atS]) => {
      const drivenHz = FIRING * WHEEL_HZ * drivenAt(atS);
      return px / 100 - (100 - drivenHz);
    });
    // Drawn without the motion it would be off by up to 0.38 Hz, the wrong way round by twice that.
    expect(Math.sqrt(off.reduce((sum, hz) => sum + hz * hz, 0) / off.length)).toBeLessThan(0.06);
  });

  it('is a companion with its own level for what turns with it', () => {
    const tire = analysis.bases.find(({ label }) => label === 'tire 1×')!;
    const companion = tire.companions.find(({ label }) => label === FIRING_LABEL)!;
    expect(companion.seen).toBe(true);
    expect(companion.amplitudeMps2).toBeCloseTo(FIRING_MPS2, 1);
  });

  it('stands in the table of levels over time', () => {
    const table = levelsOverTime(picture!, new Set([FIRING_LABEL, 'tire 1×']));
    const column = table.labels.indexOf(FIRING_LABEL);
    expect(column).toBeGreaterThanOrEqual(0);
    for (const { amplitudesMps2 } of table.rows) expect(amplitudesMps2[column]).toBeGreaterThan(0.4);
  });
});
