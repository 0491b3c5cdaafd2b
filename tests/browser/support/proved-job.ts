/**
 * A job of two short recordings, one before and one after the repair: driveshaft 2× is gone. It is answered in a
 * fraction of the time of the demo, for tests to which it does not matter what was recorded.
 */
import { Buffer } from 'node:buffer';
import { seededRandom } from '../../support/random.ts';

export const PROVED_TITLE = 'Van that hums, cured';

const RATE_HZ = 125;
const SECONDS = 10;
/** 12.5 m/s on 2 m a turn, axle ratio 4: wheel 6.25 Hz, driveshaft 25 Hz. */
const WHEEL_HZ = 6.25;
const AXLE = 4;

/** Tire 1× and driveshaft 2× of the given amplitude, m/s², on a speed that swings by a percent, and noise. */
function recording(shaftTwiceMps2: number, seed: number): string {
  const { normal } = seededRandom(seed);
  const noise = (): string => (0.02 * normal()).toFixed(4);
  const rows = Array.from({ length: SECONDS * RATE_HZ }, (_, row) => {
    const t = row / RATE_HZ;
    const wheel = 2 * Math.PI * WHEEL_HZ * (t + 0.01 * (1 - Math.cos(t)));
    const z = 9.81 + 0.05 * Math.sin(wheel) + shaftTwiceMps2 * Math.sin(2 * AXLE * wheel) + 0.02 * normal();
    return `${t.toFixed(3)},${noise()},${noise()},${z.toFixed(4)}`;
  });
  return ['time (s),x (m/s²),y (m/s²),z (m/s²)', ...rows].map((line) => `${line}\n`).join('');
}

const file = (name: string, text: string) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });

const drive = { speed: '12.5 m/s', speedSource: 'gps', gearRatio: 0.75, load: 'cruise' };

/** What a page is given to open. */
export const PROVED_JOB = [
  file(
    'cured.job.json',
    JSON.stringify({
      schemaVersion: 1,
      title: PROVED_TITLE,
      complaint: 'Hums at 28 mph',
      vehicle: {
        layout: 'rear-drive',
        tire: { kind: 'rolling-circumference', circumferenceM: 2 },
        axleRatio: AXLE,
        cylinders: 6,
      },
      work: [],
      runs: [
        { ...drive, file: 'as-found.csv', name: 'As found', stage: 'complaint' },
        { ...drive, file: 'repaired.csv', name: 'Repaired', stage: 'proof' },
      ],
      measurements: [],
    }),
  ),
  file('as-found.csv', recording(0.6, 1)),
  file('repaired.csv', recording(0, 2)),
];
