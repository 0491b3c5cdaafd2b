/** Parts of a recording, on the recording's own clock. */
import type { Recording, Segment, Track } from './recording.ts';

/** A stretch of time on a recording's clock, s. */
export interface Span {
  readonly fromS: number;
  readonly toS: number;
}

/** Samples of a segment within a span; null where there are none. */
const segmentWithin = (segment: Segment, { fromS, toS }: Span, rateHz: number): Segment | null => {
  const { startS, timeS, accelerationMps2 } = segment;
  const rows = accelerationMps2[0]?.length ?? 0;
  const indexAt = (atS: number): number => {
    const since = atS - startS;
    if (!timeS) return Math.min(rows, Math.max(0, Math.ceil(since * rateHz - 1e-6)));
    const at = timeS.findIndex((time) => time >= since - 1e-9);
    return at < 0 ? rows : at;
  };
  const from = indexAt(fromS);
  const to = indexAt(toS);
  if (to - from < 2) return null;
  const firstS = timeS ? timeS[from]! : from / rateHz;
  return {
    startS: startS + firstS,
    timeS: timeS ? timeS.slice(from, to).map((time) => time - firstS) : null,
    accelerationMps2: accelerationMps2.map((axis) => axis.subarray(from, to)),
  };
};

const trackWithin = (track: Track, spans: readonly Span[], aroundS: number): Track => {
  const inside = (_: unknown, i: number): boolean =>
    spans.some(({ fromS, toS }) => track.timeS[i]! >= fromS - aroundS && track.timeS[i]! <= toS + aroundS);
  return { ...track, timeS: track.timeS.filter(inside), value: track.value.filter(inside) };
};

const lengthOf = ({ accelerationMps2 }: Segment): number => accelerationMps2[0]?.length ?? 0;

/**
 * What a recording holds within some spans of its clock, its logged speeds with it. Samples are not copied.
 * @param spans in order of time, apart from each other
 * @param aroundS logged values this long before and after a span are kept as well: one that changes fast is drawn through
 *   them
 */
export const cutRecording = (recording: Recording, spans: readonly Span[], aroundS = 0): Recording => {
  const { samplingRateHz, roadSpeedMps, wheelSpeedMps, engineSpeedRpm } = recording;
  const segments = recording.segments.flatMap((segment) =>
    spans.flatMap((span) => segmentWithin(segment, span, samplingRateHz) ?? []),
  );
  return {
    ...recording,
    segments,
    durationS: segments.reduce((sum, segment) => sum + lengthOf(segment), 0) / samplingRateHz,
    ...(roadSpeedMps && { roadSpeedMps: trackWithin(roadSpeedMps, spans, aroundS) }),
    ...(wheelSpeedMps && { wheelSpeedMps: trackWithin(wheelSpeedMps, spans, aroundS) }),
    ...(engineSpeedRpm && { engineSpeedRpm: trackWithin(engineSpeedRpm, spans, aroundS) }),
  };
};
