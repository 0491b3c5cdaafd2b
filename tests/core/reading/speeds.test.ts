import { describe, expect, it } from 'vitest';
import { codesOf, recordingOf, sampleG, seconds, table } from './fixture.ts';

const withColumns = (names: string, cells: (i: number) => (string | number)[], rows = 400): string =>
  `time (s),acc x (g),acc y (g),acc z (g),${names}\n${table((i) => [seconds(i), ...sampleG(i), ...cells(i)], ',', rows)}`;

describe('speeds beside the acceleration', () => {
  it('come out in m/s and rev/min whatever their unit', async () => {
    const { roadSpeedMps, engineSpeedRpm } = await recordingOf(
      withColumns('GPS speed (km/h),engine speed (Hz)', (i) => [90 + 0.1 * i, 30 + 0.01 * i]),
    );
    expect(roadSpeedMps!.value[0]).toBeCloseTo(25, 12);
    expect(roadSpeedMps!.unit).toBe('km/h');
    expect(roadSpeedMps!.unitBecause).toContain('km/h');
    expect(engineSpeedRpm!.value[0]).toBeCloseTo(1800, 9);
    const mph = await recordingOf(withColumns('vehicle speed (mph)', (i) => [60 + 0.1 * i]));
    expect(mph.roadSpeedMps!.value[0]).toBeCloseTo(26.8224, 12);
  });

  it('keep the rows in which a held value is fresh, also while the speed is steady', async () => {
    // A 4 Hz source written at 100 Hz: a value every 25 rows, steady between 1 s and 3 s.
    const speed = (i: number): number => {
      const k = Math.floor(i / 25);
      return k < 4 ? 20 + k : k < 12 ? 24 : 24 - (k - 11);
    };
    const { roadSpeedMps } = await recordingOf(withColumns('speed (m/s)', (i) => [speed(i)]));
    expect(roadSpeedMps!.intervalS).toBeCloseTo(0.25, 9);
    expect(Array.from(roadSpeedMps!.timeS.slice(0, 16)).map((t) => Number(t.toFixed(6)))).toEqual(
      Array.from({ length: 16 }, (_, k) => k / 4),
    );
    expect(roadSpeedMps!.value[10]).toBe(24);
    expect(roadSpeedMps!.step).toBe(1);
  });

  it('keep every filled row of a column that is empty between updates', async () => {
    const { roadSpeedMps } = await recordingOf(withColumns('speed (m/s)', (i) => [i % 50 === 7 ? 25 : '']));
    expect(Array.from(roadSpeedMps!.timeS).map((t) => Number(t.toFixed(6)))).toEqual([
      0.07, 0.57, 1.07, 1.57, 2.07, 2.57, 3.07, 3.57,
    ]);
    expect(Array.from(roadSpeedMps!.value)).toEqual(Array(8).fill(25));
  });

  it('are read from columns that stay empty until a receiver has its fix', async () => {
    const late = (i: number): (string | number)[] => (i < 6000 ? ['', ''] : [90, 1800]);
    const { roadSpeedMps, engineSpeedRpm } = await recordingOf(
      withColumns('GPS speed (km/h),engine speed (rpm)', late, 6400),
    );
    expect(roadSpeedMps!.timeS[0]).toBeCloseTo(60, 9);
    expect(roadSpeedMps!.value.every((v) => Math.abs(v - 25) < 1e-9)).toBe(true);
    expect(engineSpeedRpm!.value[0]).toBe(1800);
    // A filled column comes first, in whatever order they stand.
    const two = await recordingOf(withColumns('GPS speed (km/h),vehicle speed (km/h)', (i) => [late(i)[0]!, 72], 6400));
    expect(two.roadSpeedMps!.columnName).toBe('vehicle speed (km/h)');
    const never = await recordingOf(withColumns('GPS speed (km/h)', () => ['']));
    expect(never.roadSpeedMps).toBeUndefined();
    expect(codesOf(never)).toContain('speed-column-empty');
  });

  it('lose the noughts of a lost signal, and keep those of a stop', async () => {
    // 90 km/h at 1 Hz, two seconds lost; braking to a stop at 5 m/s², 3 s there, away at 2.5 m/s².
    const lost = (i: number): number => (i >= 500 && i < 700 ? 0 : 90);
    const stop = (i: number): number => {
      const t = Math.floor(i / 25) / 4;
      return 3.6 * Math.max(0, t < 10 ? Math.min(25, 25 - 5 * (t - 2)) : 2.5 * (t - 10));
    };
    const gone = await recordingOf(withColumns('GPS speed (km/h)', (i) => [lost(i)], 1200));
    expect(gone.roadSpeedMps!.value.every((v) => v > 24)).toBe(true);
    expect(gone.notes.find(({ code }) => code === 'speed-dropouts')!.text).toContain('1 time, 2 s in all');
    const stopped = await recordingOf(withColumns('GPS speed (km/h)', (i) => [stop(i)], 1600));
    expect(Math.min(...stopped.roadSpeedMps!.value)).toBe(0);
    expect(codesOf(stopped)).not.toContain('speed-dropouts');
    // Noughts until the first fix, in the middle of a drive.
    const first = await recordingOf(
      withColumns('GPS speed (km/h)', (i) => [i < 400 ? 0 : 90 + (Math.floor(i / 100) % 3)], 1200),
    );
    expect(first.roadSpeedMps!.value.every((v) => v > 24)).toBe(true);
  });

  it('leave out what no vehicle drives: no fix, and misread values', async () => {
    const { roadSpeedMps } = await recordingOf(
      withColumns('speed (m/s)', (i) => [i < 10 ? -1 : i === 20 ? 9999 : 20 + 0.01 * i]),
    );
    expect(roadSpeedMps!.timeS[0]).toBeCloseTo(0.1, 9);
    expect(Math.max(...roadSpeedMps!.value)).toBeLessThan(25);
  });

  it('run on in time where a row was written twice', async () => {
    const twice = (i: number): number => (i > 40 ? i - 1 : i);
    const text = `time (s),acc x (g),acc y (g),acc z (g),speed (m/s)\n${table((i) => [seconds(twice(i)), ...sampleG(twice(i)), 20 + twice(i) / 10])}`;
    const recording = await recordingOf(text);
    expect(codesOf(recording)).toContain('rows-repeated');
    recording.roadSpeedMps!.timeS.forEach((t, i) =>
      expect(recording.roadSpeedMps!.value[i]).toBeCloseTo(20 + 10 * t, 9),
    );
    recording.roadSpeedMps!.timeS.forEach((t, i, all) => expect(i === 0 || t > all[i - 1]!).toBe(true));
  });

  it('average the wheels, unless one column is their mean already', async () => {
    const four = await recordingOf(
      withColumns('wheel_fl (km/h),wheel_fr (km/h),wheel_rl (km/h),wheel_rr (km/h)', (i) => [
        36 + i,
        37 + i,
        38 + i,
        39 + i,
      ]),
    );
    expect(four.wheelSpeedMps!.value[0]).toBeCloseTo(37.5 / 3.6, 12);
    expect(four.wheelSpeedMps!.columnName).toContain('wheel_rr');
    const mean = await recordingOf(withColumns('wheel mean (m/s),wheel_fl (m/s)', (i) => [10 + i / 100, 99]));
    expect(mean.wheelSpeedMps!.value[0]).toBe(10);
  });

  it('are known by their German, French and Spanish names', async () => {
    for (const name of [
      'Fahrgeschwindigkeit (km/h)',
      'Tempo [km/h]',
      'Fahrzeuggeschwindigkeit km/h',
      'Geschwindigkeit (km/h)',
      'Tachogeschwindigkeit (km/h)',
      'vitesse (km/h)',
      'Vitesse GPS [km/h]',
      'vitesse_kmh',
      'velocidad (km/h)',
      'Velocidad del vehículo [km/h]',
      'Velocidad GPS km/h',
    ]) {
      const { roadSpeedMps, engineSpeedRpm } = await recordingOf(withColumns(name, () => [90]));
      expect(roadSpeedMps?.value[0], name).toBeCloseTo(25, 12);
      expect(engineSpeedRpm, name).toBeUndefined();
    }
    for (const name of [
      'Motordrehzahl (1/min)',
      'Drehzahl [U/min]',
      'régime moteur (tr/min)',
      'vitesse moteur (tr/min)',
      'vitesse de rotation (tr/min)',
      'velocidad del motor (rpm)',
      'velocidad de rotación (rpm)',
      'revoluciones (rpm)',
    ]) {
      const { roadSpeedMps, engineSpeedRpm } = await recordingOf(withColumns(name, () => [1800]));
      expect(engineSpeedRpm?.value[0], name).toBe(1800);
      expect(roadSpeedMps, name).toBeUndefined();
    }
    for (const name of ['Radgeschwindigkeit (km/h)', 'vitesse roue (km/h)', 'velocidad rueda (km/h)'])
      expect((await recordingOf(withColumns(name, () => [90]))).wheelSpeedMps?.value[0], name).toBeCloseTo(25, 12);
    for (const name of [
      'Windgeschwindigkeit (km/h)',
      'vitesse du vent (km/h)',
      'Winkelgeschwindigkeit (deg/s)',
      'vitesse angulaire (rad/s)',
      'Lüfterdrehzahl (1/min)',
      'arbre (tr/min)',
    ]) {
      const recording = await recordingOf(withColumns(name, () => [9]));
      expect([recording.roadSpeedMps, recording.engineSpeedRpm, recording.wheelSpeedMps], name).toEqual([
        undefined,
        undefined,
        undefined,
      ]);
    }
  });

  it('are not guessed without a unit, and a wheel in rev/min is no speed', async () => {
    const recording = await recordingOf(withColumns('speed,wheel rpm', (i) => [60 + i / 100, 500]));
    expect(recording.roadSpeedMps).toBeUndefined();
    expect(recording.wheelSpeedMps).toBeUndefined();
    expect(codesOf(recording).filter((code) => code === 'speed-column-left-out')).toHaveLength(2);
  });

  it('do not take another shaft for the engine', async () => {
    const recording = await recordingOf(withColumns('turbine rpm,engine rpm', (i) => [1500, 2000 + i]));
    expect(recording.engineSpeedRpm!.columnName).toBe('engine rpm');
    expect((await recordingOf(withColumns('driveshaft rpm', () => [1500]))).engineSpeedRpm).toBeUndefined();
  });
});
