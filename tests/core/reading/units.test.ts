import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { speedUnitOf, timeUnitOf, turningUnitOf } from '../../../src/core/reading/layout/header-units.ts';
import { codesOf, problemOf, recordingOf, sampleG, seconds, table } from './fixture.ts';

/** Factor from g to the unit; standard gravity 9.80665 m/s² (3rd CGPM, 1901). */
const PER_G = { g: 1, mg: 1000, 'm/s²': 9.80665, 'mm/s²': 9806.65 } as const;
const file = (factor: number, names: string, decimals = 5): string =>
  `time (s),${names}\n${table((i) => [seconds(i), ...sampleG(i).map((v) => (v * factor).toFixed(decimals))])}`;

describe('the unit of the acceleration', () => {
  it('is read from the header in its many spellings', async () => {
    const spellings = {
      g: ['g', 'G', 'gn', 'gees'],
      mg: ['mg', 'milli-g'],
      'm/s²': ['m/s²', 'm/s^2', 'm/s2', 'm/s/s', 'm s⁻²', 'm·s⁻²', 'm.s-2', 'mps2', 'm/s**2'],
      'mm/s²': ['mm/s²', 'mm/s2'],
    } as const;
    for (const [unit, words] of Object.entries(spellings) as unknown as [keyof typeof PER_G, string[]][])
      for (const word of words)
        for (const name of [(a: string) => `acc ${a} (${word})`, (a: string) => `acc_${a} [${word}]`]) {
          const recording = await recordingOf(file(PER_G[unit], ['x', 'y', 'z'].map(name).join(',')));
          expect(recording.channels[0]!.unit, word).toBe(unit);
          expect(recording.channels[0]!.unitBecause).toContain('name says');
          expect(recording.segments[0]!.accelerationMps2[2]![7]).toBeCloseTo(sampleG(7)[2] * 9.80665, 3);
        }
  });

  it('is found from the size of gravity where the header is silent, and the reason is told', async () => {
    for (const [unit, factor] of Object.entries(PER_G)) {
      const recording = await recordingOf(file(factor, 'acc x,acc y,acc z'));
      expect(recording.channels[0]!.unit).toBe(unit);
      expect(recording.channels[0]!.unitBecause).toContain('gravity');
      expect(codesOf(recording)).toContain('unit-by-gravity');
      expect(recording.segments[0]!.accelerationMps2[0]![7]).toBeCloseTo(sampleG(7)[0] * 9.80665, 3);
      expect(recording.gravity!.mps2).toBeCloseTo(9.80665, 0);
    }
  });

  it('is raw counts for whole numbers, scaled so that the steady part is gravity', async () => {
    for (const countsPerG of [64, 256, 1024, 4096, 8192, 16384]) {
      const recording = await recordingOf(file(countsPerG, 'acc x,acc y,acc z', 0));
      expect(recording.channels[0]!.unit, String(countsPerG)).toBe('counts');
      expect(recording.channels[0]!.mps2PerUnit).toBeCloseTo(9.80665 / countsPerG, countsPerG > 300 ? 4 : 2);
      expect(recording.channels[0]!.unitBecause).toContain('raw counts');
    }
  });

  it('of whole numbers near 1000 is milli-g or 1024 counts, whichever is nearer, and the other is told', async () => {
    // A zero point off by up to 3 % of gravity, as small sensors leave the factory.
    const read = async (perG: number, offset: number, unit = '') => {
      const rows = table((i) => [
        seconds(i),
        ...sampleG(i).map((v, k) => Math.round(perG * (k === 2 ? v + offset : v))),
      ]);
      const recording = await recordingOf(`time (s),acc x${unit},acc y${unit},acc z${unit}\n${rows}`);
      return {
        ...recording.channels[0]!,
        told: recording.notes.find(({ code }) => code === 'unit-ambiguous')?.text ?? '',
      };
    };
    for (const offset of [-0.008, 0, 0.02]) {
      const counts = await read(1024, offset);
      expect(counts.unit).toBe('counts');
      // The converter's own scale, not one that calls the offset gravity.
      expect(counts.mps2PerUnit).toBe(9.80665 / 1024);
      expect(counts.unitBecause).toContain('power of two');
    }
    for (const offset of [-0.02, 0, 0.008]) {
      const milli = await read(1000, offset);
      expect(milli.unit).toBe('mg');
      expect(milli.mps2PerUnit).toBeCloseTo(9.80665e-3, 12);
    }
    expect((await read(1024, 0)).told).toMatch(/nearest to 1024 raw counts to the g, but may be mg: .* off by 2\.4 %/);
    expect((await read(1000, 0)).told).toMatch(/nearest to mg, but may be 1024 raw counts to the g: .* off by 2\.4 %/);
    expect((await read(1000, 0, ' (counts)')).told).toContain('1000 raw counts to the g');
    for (const perG of [256, 4096, 16384]) expect((await read(perG, 0.01)).mps2PerUnit).toBe(9.80665 / perG);
    expect((await read(4096, 0)).told).toBe('');
  });

  it('is raw counts where the header says so, even at the size of another unit', async () => {
    const recording = await recordingOf(file(1000, 'acc x (counts),acc y (counts),acc z (counts)', 0));
    expect(recording.channels[0]!.unit).toBe('counts');
  });

  it('follows gravity against the header where gravity is plain, with a warning', async () => {
    const recording = await recordingOf(file(1, 'acc x (m/s²),acc y (m/s²),acc z (m/s²)'));
    expect(recording.channels.map((c) => c.unit)).toEqual(['g', 'g', 'g']);
    expect(recording.notes.find((note) => note.code === 'unit-overruled')!.severity).toBe('warning');
  });

  it('stays with the header where gravity was taken out', async () => {
    const text = `time (s),acc x (g),acc y (g),acc z (g)\n${table((i) => [seconds(i), ...sampleG(i).map((v, k) => (k === 2 ? v - 1 : v))])}`;
    const recording = await recordingOf(text);
    expect(recording.channels[0]!.unit).toBe('g');
    expect(recording.gravity).toBeNull();
  });

  it('can be given by hand', async () => {
    const text = `time (s),acc x,acc y,acc z\n${table((i) => [seconds(i), ...sampleG(i).map((v, k) => (k === 2 ? v - 1 : v))])}`;
    expect((await problemOf(text)).code).toBe('unit-unclear');
    const recording = await recordingOf(text, { accelerationUnit: 'g' });
    expect(recording.channels[0]!.unitBecause).toContain('by hand');
    expect(recording.notes.find(({ code }) => code === 'unit-by-hand')!.text).toContain('g was given by hand');
    expect(recording.segments[0]!.accelerationMps2[1]![3]).toBeCloseTo(sampleG(3)[1] * 9.80665, 9);
  });

  it('is taken from a remark above the table', async () => {
    const rows = `time (s),acc x,acc y,acc z\n${table((i) => [seconds(i), ...sampleG(i).map((v, k) => (k === 2 ? v - 1 : v))])}`;
    for (const remark of ['Unit: g', '# Einheit; g', 'acceleration unit = g']) {
      const recording = await recordingOf(`${remark}\n${rows}`);
      expect(recording.channels[0]!.unit).toBe('g');
      expect(recording.channels[0]!.unitBecause).toContain('remark');
    }
  });

  it('scales any mounting alike: the direction of gravity is kept, its size is not changed', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        async (a, b) => {
          const direction = [Math.cos(a) * Math.cos(b), Math.sin(a) * Math.cos(b), Math.sin(b)];
          const text = `time (s),acc x,acc y,acc z\n${table((i) => [seconds(i), ...direction.map((d, k) => (d + 0.05 * Math.sin(i * (k + 1))).toFixed(6))])}`;
          const { gravity } = await recordingOf(text);
          expect(gravity!.mps2).toBeCloseTo(9.80665, 0);
          gravity!.direction.forEach((part, k) => expect(part).toBeCloseTo(direction[k]!, 1));
        },
      ),
      { numRuns: 20 },
    );
  });
});

describe('units of time and speed in names', () => {
  it('knows spellings in four languages', () => {
    for (const name of [
      'time (s)',
      't_s',
      'seconds_elapsed',
      'Zeit in Sekunden',
      'Temps (secondes)',
      'tiempo_segundos',
    ])
      expect(timeUnitOf(name)?.factor, name).toBe(1);
    for (const name of ['time (ms)', 'timeMillis', 'Millisekunden', 'timestamp_ms', 'milisegundos'])
      expect(timeUnitOf(name)?.factor, name).toBe(1e-3);
    for (const name of ['time (µs)', 'time_us', 'mikrosekunden', 'microsegundos'])
      expect(timeUnitOf(name)?.factor, name).toBe(1e-6);
    for (const name of ['time [ns]', 'timestamp_ns', 'nanoseconds']) expect(timeUnitOf(name)?.factor, name).toBe(1e-9);
    expect(timeUnitOf('timestamp')).toBeNull();
  });

  it('converts speeds by their exact factors', () => {
    const factors = {
      'speed (m/s)': 1,
      speed_mps: 1,
      'Geschwindigkeit (km/h)': 1 / 3.6,
      'Speed km/h': 1 / 3.6,
      speed_kmh: 1 / 3.6,
      'vitesse [km/h]': 1 / 3.6,
      'speed mph': 0.44704,
      'speed (knots)': 1852 / 3600,
      speed_kn: 1852 / 3600,
      'speed (ft/s)': 0.3048,
    };
    for (const [name, factor] of Object.entries(factors))
      expect(speedUnitOf(name)?.factor, name).toBeCloseTo(factor, 12);
    expect(speedUnitOf('speed')).toBeNull();
  });

  it('knows engine speed per minute and per second', () => {
    for (const name of ['engine rpm', 'Motordrehzahl (1/min)', 'Drehzahl [U/min]', 'régime (tr/min)', 'engine_rpm'])
      expect(turningUnitOf(name)?.factor, name).toBe(1);
    expect(turningUnitOf('engine speed (Hz)')?.factor).toBe(60);
  });
});
