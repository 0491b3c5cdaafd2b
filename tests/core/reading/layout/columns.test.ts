import { describe, expect, it } from 'vitest';
import { codesOf, expectShake, problemOf, recordingOf, sampleG, seconds, table } from '../fixture.ts';

const g = (i: number): number[] => sampleG(i);
const mps2 = (i: number): string[] => sampleG(i).map((value) => (value * 9.80665).toFixed(8));

describe('the columns of a file', () => {
  it('finds the axes in any order among other sensors, text and lengths', async () => {
    const header =
      'loggingTime(txt),gyro_z (rad/s),acc_z (g),latitude,magnetometer x (µT),acc_x (g),label,time (s),abs acceleration (g),acc_y (g),temperature (°C)';
    const text = table((i) => {
      const [x, y, z] = g(i);
      return [
        '2024-05-01',
        0.01 * i,
        z!,
        48.1,
        30,
        x!,
        'walk',
        seconds(i),
        Math.hypot(x!, y!, z!).toFixed(4),
        y!,
        21.5,
      ];
    });
    const recording = await recordingOf(`${header}\n${text}`);
    expectShake(recording);
    expect(recording.channels.map((c) => c.columnName)).toEqual(['acc_x (g)', 'acc_y (g)', 'acc_z (g)']);
  });

  it('takes bare axis letters beside a named axis for the same sensor’s, in its unit', async () => {
    for (const header of ['time (s),acc x (g),y,z', 'time (s),X,Y,Vertical acceleration (g)']) {
      const recording = await recordingOf(`${header}\n${table((i) => [seconds(i), ...g(i)])}`);
      expectShake(recording);
      expect(recording.channels.map(({ axis, unit }) => `${axis} ${unit}`)).toEqual(['x g', 'y g', 'z g']);
    }
    const counts = await recordingOf(
      `# Sample rate: 100 Hz\n# x,y,z counts\n${table((i) => g(i).map((v) => Math.round(8192 * v)))}`,
    );
    expect(counts.channels.map(({ columnName }) => columnName)).toEqual(['x', 'y', 'z counts']);
    // Letters that are not the others of this axis stay out of it.
    const alone = await recordingOf(`time (s),acc x (g),x,z\n${table((i) => [seconds(i), ...g(i)])}`);
    expect(alone.channels).toHaveLength(1);
  });

  it('takes three axes of one place for a sensor’s, where gravity is in them and no column is named as acceleration', async () => {
    const rows = table((i) => [seconds(i), ...g(i), ...g(i).map((v) => 0.9 * v)]);
    const recording = await recordingOf(`time (s),seat x,seat y,seat z,dash x,dash y,dash z\n${rows}`);
    expectShake(recording);
    expect(recording.channels.map((c) => c.columnName)).toEqual(['seat x', 'seat y', 'seat z']);
    expect(recording.notes.find(({ code }) => code === 'acceleration-columns-assumed')!.text).toContain(
      'Left out: "dash x", "dash y", "dash z".',
    );
    const tilt = table((i) => [seconds(i), 3 + Math.sin(i), 2, 7]);
    expect((await problemOf(`time (s),tilt x,tilt y,tilt z\n${tilt}`)).code).toBe('no-acceleration');
  });

  it('takes vibration for acceleration where its unit is one', async () => {
    const rows = table((i) => [seconds(i), ...g(i)]);
    const recording = await recordingOf(`time (s),Vibration 1 (g),Vibration 2 (g),Vibration 3 (g)\n${rows}`);
    expectShake(recording);
    expect((await problemOf(`time (s),Vibration (mm/s)\n${table((i) => [seconds(i), mps2(i)[0]!])}`)).code).toBe(
      'no-acceleration',
    );
  });

  it('tells a time from a speed of the same name by its unit', async () => {
    const rows = table((i) => [seconds(i), ...g(i), 72]);
    const recording = await recordingOf(`Tempo (s),Aceleração X,Aceleração Y,Aceleração Z,Tempo (km/h)\n${rows}`);
    expectShake(recording);
    expect(recording.roadSpeedMps?.value[0]).toBeCloseTo(20, 9);
  });

  it('knows the words of four languages', async () => {
    const headers = [
      [
        'Time (s)',
        'Acceleration x (m/s^2)',
        'Acceleration y (m/s^2)',
        'Acceleration z (m/s^2)',
        'Absolute acceleration (m/s^2)',
      ],
      [
        'Zeit (s)',
        'Beschleunigung x (m/s²)',
        'Beschleunigung y (m/s²)',
        'Beschleunigung z (m/s²)',
        'Gesamtbeschleunigung (m/s²)',
      ],
      ['Temps (s)', 'Accélération x (m/s²)', 'Accélération y (m/s²)', 'Accélération z (m/s²)', 'Norme (m/s²)'],
      ['Tiempo (s)', 'Aceleración x (m/s²)', 'Aceleración y (m/s²)', 'Aceleración z (m/s²)', 'Módulo (m/s²)'],
      ['Zeit [s]', 'Längsbeschl. [m/s²]', 'Querbeschl. [m/s²]', 'Vertikalbeschl. [m/s²]', 'Drehrate [°/s]'],
      ['elapsed_s', 'accel longitudinal mps2', 'accel lateral mps2', 'accel vertical mps2', 'yaw rate'],
    ];
    for (const header of headers) {
      const recording = await recordingOf(`${header.join(';')}\n${table((i) => [seconds(i), ...mps2(i), 9.9], ';')}`);
      recording.segments[0]!.accelerationMps2.forEach((axis, k) =>
        expect(axis[5], header.join()).toBeCloseTo(g(5)[k]! * 9.80665, 6),
      );
      expect(recording.channels.map((c) => c.unit)).toEqual(['m/s²', 'm/s²', 'm/s²']);
    }
  });

  it('knows common short names', async () => {
    for (const header of [
      't,ax,ay,az',
      'time,accX,accY,accZ',
      'Time,x_acc,y_acc,z_acc',
      'timestamp,AccelerometerX,AccelerometerY,AccelerometerZ',
      't,X,Y,Z',
      'time,gFx,gFy,gFz',
      'time,accelerationX(G),accelerationY(G),accelerationZ(G)',
      'time,a_x,a_y,a_z',
    ])
      expectShake(await recordingOf(`${header}\n${table((i) => [seconds(i), ...g(i)])}`));
  });

  it('prefers acceleration with gravity to the same with gravity taken out', async () => {
    const header =
      'time (s),linear acceleration x (g),linear acceleration y (g),linear acceleration z (g),acceleration x (g),acceleration y (g),acceleration z (g),gravity x (g),gravity y (g),gravity z (g)';
    const recording = await recordingOf(
      `${header}\n${table((i) => [seconds(i), ...g(i).map((v) => v / 3), ...g(i), 0, 0, 1])}`,
    );
    expectShake(recording);
    expect(codesOf(recording)).toContain('acceleration-columns-left-out');
  });

  it('reads acceleration without gravity where that is all there is, and says that up is not known', async () => {
    const header = 'time (s),linear acceleration x (m/s²),linear acceleration y (m/s²),linear acceleration z (m/s²)';
    const recording = await recordingOf(
      `${header}\n${table((i) => [seconds(i), Math.sin(i), Math.cos(i), Math.sin(2 * i)])}`,
    );
    expect(recording.gravity).toBeNull();
    expect(codesOf(recording)).toContain('gravity-not-known');
  });

  it('reads one axis and two axes', async () => {
    const one = await recordingOf(`time (s),vertical acceleration (g)\n${table((i) => [seconds(i), g(i)[2]!])}`);
    expect(one.channels.map((c) => c.axis)).toEqual(['z']);
    expect(one.gravity!.direction).toEqual([1]);
    const two = await recordingOf(`time (s),acc x (g),acc z (g)\n${table((i) => [seconds(i), g(i)[0]!, g(i)[2]!])}`);
    expect(two.channels.map((c) => c.axis)).toEqual(['x', 'z']);
  });

  it('reads only the accelerometer rows where rows of several sensors are mixed', async () => {
    const rows = Array.from(
      { length: 64 },
      (_, i) => `Gyroscope,${seconds(i)},9,9,9\nAccelerometer,${seconds(i)},${g(i).join(',')}\n`,
    ).join('');
    const recording = await recordingOf(`sensor,time (s),x,y,z\n${rows}`);
    expectShake(recording);
    expect(codesOf(recording)).toContain('sensor-rows-chosen');
  });

  it('skips rows that hold other sensors only', async () => {
    const rows = Array.from(
      { length: 64 },
      (_, i) => `${seconds(i)},${g(i).join(',')},,,\n${(i / 100 + 0.004).toFixed(3)},,,,0.1,0.2,0.3\n`,
    ).join('');
    const recording = await recordingOf(`time (s),acc x (g),acc y (g),acc z (g),gyro x,gyro y,gyro z\n${rows}`);
    expectShake(recording);
    expect(codesOf(recording)).toContain('rows-of-other-sensors');
  });

  it('finds acceleration among six nameless columns by gravity', async () => {
    const recording = await recordingOf(table((i) => [seconds(i), 0.01, -0.02 + 0.001 * i, 0.05, ...g(i)]));
    expectShake(recording);
  });

  it('is not misled by a file name where gravity is plainly there', async () => {
    expectShake(await recordingOf(`time (s),x,y,z\n${table((i) => [seconds(i), ...g(i)])}`, {}, 'gps run 3.csv'));
  });

  it('refuses x, y, z of another sensor that only the file name or a remark names', async () => {
    const rows = table((i) => [seconds(i), Math.sin(i), Math.cos(i), 0.1]);
    expect((await problemOf(`time (s),x,y,z\n${rows}`, {}, 'Gyroscope.csv')).code).toBe('gyroscope-only');
    expect((await problemOf(`# Sensor: Gyroscope\ntime (s),x,y,z\n${rows}`)).code).toBe('gyroscope-only');
    expect((await problemOf(`time (s),x,y,z\n${table((i) => [seconds(i), 0, 0, 9.81])}`, {}, 'Gravity.csv')).code).toBe(
      'no-acceleration',
    );
  });

  it('does not take unknown names for acceleration', async () => {
    const problem = await problemOf(`time (s),voltage,current,power\n${table((i) => [seconds(i), ...g(i)])}`);
    expect(problem.code).toBe('no-acceleration');
    expect(problem.message).toContain('"voltage"');
  });
});
