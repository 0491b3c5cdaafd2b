/**
 * Tones that the end stop of the sensor makes: what it cuts off a strong shake comes back at multiples of it, and these
 * are no second fault.
 */
import type { Finding } from './finding.ts';

/** Of half a sine the second multiple has 0.42 of the first, of a square wave the third has a third (Fourier). */
const MOST_SHARE = 0.45;
/**
 * What is cut off is at no time more than the shake itself, so a multiple has no more than twice the mean of it: so many
 * times the share of cut-off samples.
 */
const OF_CLIPPED = 2;

/** True where a tone may be but the multiple of a stronger one that the sensor's end stop makes. */
export const isMadeAtEndStop = (tone: Finding, strong: Finding): boolean => {
  if (tone.inference !== strong.inference) return false;
  const { recording } = tone.inference.run;
  const [own, other] = [tone.match.tone.peak, strong.match.tone.peak];
  const multiple = Math.round(own.frequencyHz / other.frequencyHz);
  if (multiple < 2 || recording.clippedShare === 0) return false;
  const offHz = Math.abs(own.frequencyHz - multiple * other.frequencyHz);
  const most = Math.min(MOST_SHARE, OF_CLIPPED * recording.clippedShare);
  return offHz < multiple * other.limitWidthHz && own.amplitudeMps2 <= most * other.amplitudeMps2;
};
