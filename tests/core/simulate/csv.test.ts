import { describe, expect, it } from 'vitest';
import { readRecording } from '../../../src/core/reading/read-recording.ts';
import { CSV_LAYOUTS } from '../../../src/core/simulate/csv-layouts.ts';
import { csvText } from '../../../src/core/simulate/csv-write.ts';
import type { Scenario } from '../../../src/core/simulate/scenario.ts';
import { rotationFromAngles } from '../../../src/core/simulate/sensor.ts';
import { simulate } from '../../../src/core/simulate/simulate.ts';
import { must } from '../../support/must.ts';

const scenario: Scenario = {
  seed: 31,
  vehicle: { layout: 'rear-drive', axleRatio: 3.73, cylinders: 8 },
  rollingCircumferenceM: 2.4,
  drive: {
    durationS: 12,
    speed: { kind: 'steady', meanMps: 24, driftSd: 0.01, driftTimeS: 3 },
    load: 'cruise',
    gearRatio: 0.7,
  },
  roadM3: 4e-6,
  faults: [{ kind: 'driveshaft-unbalance', levelMps2: 0.2 }],
  sensor: { rateHz: 200, mounting: rotationFromAngles(10, -5, 3), noiseDensity: 0.002, stepMps2: 0, jitterS: 0 },
  log: {
    speed: { rateHz: 1, step: 0.1, unit: 'km/h', lagS: 0, factor: 1, noiseMps: 0 },
    engine: { rateHz: 5, stepRpm: 0.25, lagS: 0 },
  },
};
const run = simulate(scenario);

describe('logger layouts', () => {
  it.each(CSV_LAYOUTS.map((layout) => [layout.name, layout] as const))(
    '%s is read back as it was simulated',
    async (_name, layout) => {
      const bytes = new TextEncoder().encode(csvText(run, layout));
      const read = must(await readRecording({ name: `${layout.name}.csv`, bytes }, {}));
      const recording = read;
      expect(recording.samplingRateHz).toBeCloseTo(200, 1);
      const axes = recording.channels.map((channel) => 'xyz'.indexOf(channel.axis));
      expect([...axes].sort()).toEqual([0, 1, 2]);
      // Counts carry no size of their own; the reader takes it from gravity, good to a few percent.
      const tolerance = layout.name === 'raw-counts' ? 0.3 : 0.002;
      const samples = recording.segments.map((s) => s.accelerationMps2[0]!.length).reduce((a, b) => a + b, 0);
      expect(samples).toBe(run.timeS.length);
      axes.forEach((axis, channel) => {
        const got = recording.segments[0]!.accelerationMps2[channel]!;
        for (let i = 0; i < got.length; i += 61)
          expect(Math.abs(got[i]! - run.accelerationMps2[axis]![i]!)).toBeLessThan(tolerance);
      });
      if (layout.columns.some((c) => c.kind === 'speed')) {
        const mean = recording.roadSpeedMps!.value.reduce((a, b) => a + b, 0) / recording.roadSpeedMps!.value.length;
        expect(mean).toBeCloseTo(24, 0);
      }
      if (layout.columns.some((c) => c.kind === 'engine')) {
        const rpm = recording.engineSpeedRpm!.value[3]!;
        expect(rpm / 60 / run.truth.engineHz!).toBeCloseTo(1, 1);
      }
    },
  );
});
