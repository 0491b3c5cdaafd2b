/** The browser's motion sensor, place and screen lock, behind functions that say plainly what is missing. */
import type { MotionSample, SpeedSample } from './recording-buffer.ts';

export type SensorProblem = 'no-sensor' | 'not-secure' | 'denied' | 'silent' | 'too-short';

/** Some browsers ask for the motion sensor, by a function only they have. */
interface AskingMotion {
  readonly requestPermission?: () => Promise<'granted' | 'denied'>;
}

/** What stands in the way of recording before anything was asked; null where nothing does. */
export function sensorObstacle(page: { isSecureContext: boolean } & object = globalThis): SensorProblem | null {
  if (!page.isSecureContext) return 'not-secure';
  return 'DeviceMotionEvent' in page ? null : 'no-sensor';
}

/** Asks for the sensor where the browser wants to be asked. Must be called from a tap. */
export async function askForMotion(): Promise<SensorProblem | null> {
  const asking = DeviceMotionEvent as unknown as AskingMotion;
  if (!asking.requestPermission) return null;
  try {
    return (await asking.requestPermission()) === 'granted' ? null : 'denied';
  } catch {
    return 'denied';
  }
}

/** A sample from an event; null where a desktop computer sends an empty one. */
export function sampleOf({ accelerationIncludingGravity: a, timeStamp }: DeviceMotionEvent): MotionSample | null {
  if (!a || a.x === null || a.y === null || a.z === null) return null;
  return { timeMs: timeStamp, x: a.x, y: a.y, z: a.z };
}

/** @returns Function that stops listening. */
export function listenToMotion(take: (sample: MotionSample) => void): () => void {
  const listener = (event: DeviceMotionEvent): void => {
    const sample = sampleOf(event);
    if (sample) take(sample);
  };
  addEventListener('devicemotion', listener);
  return () => removeEventListener('devicemotion', listener);
}

/** Watches the road speed. Fixes come late by a fraction of a second; they are stamped when they come. */
export function watchSpeed(take: (sample: SpeedSample) => void, fail: (isDenied: boolean) => void): () => void {
  if (!('geolocation' in navigator)) {
    fail(false);
    return () => undefined;
  }
  const id = navigator.geolocation.watchPosition(
    ({ coords }) => coords.speed !== null && take({ timeMs: performance.now(), speedMps: coords.speed }),
    (error) => fail(error.code === error.PERMISSION_DENIED),
    { enableHighAccuracy: true, maximumAge: 0 },
  );
  return () => navigator.geolocation.clearWatch(id);
}

/** Keeps the screen on. @returns What lets it go, or null where the browser will not keep it on. */
export async function keepAwake(): Promise<(() => void) | null> {
  if (!('wakeLock' in navigator)) return null;
  try {
    const lock = await navigator.wakeLock.request('screen');
    return () => void lock.release();
  } catch {
    return null;
  }
}
