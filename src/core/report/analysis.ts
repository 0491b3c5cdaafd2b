/** What analyse() returns: the Report, and beside it the bulky numbers that pictures are drawn from. */
import type { FindingBasis } from '../diagnosis/evidence/case.ts';
import type { SpeedTrack } from '../signal/speed/equal-angle.ts';
import type { AmplitudeSpectrum, TimeFrequency } from '../signal/spectra/spectrum.ts';
import type { Line, SpeedGroup } from '../vehicle/line.ts';
import type { Report } from './report.ts';

export interface RunPicture {
  /** Same name as in report.runs. */
  readonly run: string;
  /** Of the recording: what lies above half of it shows as its image. */
  readonly samplingRateHz: number;
  /** All axes together (root-sum-square), for the main chart. */
  readonly spectrum: AmplitudeSpectrum;
  /** Noise floor under the spectrum at each bin, m/s² (amplitude a bin of noise shows on average). */
  readonly floorMps2: Float64Array;
  readonly timeFrequency: TimeFrequency;
  /** Expected lines after the speed scale was found. */
  readonly lines: readonly Line[];
  /** History of the speed of each group of lines relative to its reference, on the recording's clock; one point where steady. */
  readonly histories: Readonly<Record<SpeedGroup, SpeedTrack>>;
  /** Spectrum on equal angle, frequencies at the reference speed; null where the speed was steady. See `orderSpectrumOf`. */
  readonly orderSpectrum: AmplitudeSpectrum | null;
}

export interface Analysis {
  readonly report: Report;
  /** What each finding's causes are ranked from; bases[i] belongs to report.findings[i]. */
  readonly bases: readonly FindingBasis[];
  readonly pictures: readonly RunPicture[];
}

/** Progress of long work. `fraction` runs 0..1 within the whole. */
export interface Progress {
  readonly step: 'reading' | 'spectra' | 'speed' | 'matching' | 'report';
  readonly fraction: number;
  /** What is being worked on, in words: 'reading cruise.csv'. */
  readonly text: string;
}
