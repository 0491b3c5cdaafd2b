/** Where each peak is drawn, and which lane its drop leads to. */
import { frequencyText } from '../../core/report/format.ts';
import type { FindingReport, PeakReport } from '../../core/report/report.ts';
import type { SpectrumGeometry } from './geometry.ts';
import type { Box } from './just-felt.ts';
import type { Lane } from './lanes.ts';
import { wordWidth } from './lanes.ts';
import type { LevelKind } from './level.ts';
import { levelOf } from './level.ts';
import { likelyMatch } from './matched.ts';
import type { PartStyle } from './part-style.ts';
import { PART_STYLES } from './part-style.ts';

export interface PeakPlace {
  readonly peak: PeakReport;
  readonly x: number;
  readonly y: number;
  /** Middle of the lane its part is on; null where it is matched to none. */
  readonly laneY: number | null;
  readonly style: PartStyle;
  readonly weight: 'chosen' | 'finding' | 'plain';
}

interface PlaceOptions {
  readonly geometry: SpectrumGeometry;
  readonly lanes: readonly Lane[];
  readonly kind: LevelKind;
  readonly share: number | null;
  readonly findings: readonly FindingReport[];
  readonly chosenHz: number | undefined;
}

/** Peaks in the shown stretch, the chosen one last so that it lies on top. */
export function placePeaks(peaks: readonly PeakReport[], options: PlaceOptions): PeakPlace[] {
  const { left, right } = options.geometry;
  return peaks
    .map((peak) => placePeak(peak, options))
    .filter(({ x }) => x >= left && x <= right)
    .sort((a, b) => +(a.weight === 'chosen') - +(b.weight === 'chosen'));
}

function placePeak(peak: PeakReport, options: PlaceOptions): PeakPlace {
  const { geometry, lanes, kind, share, findings, chosenHz } = options;
  const match = likelyMatch(peak);
  const lane = lanes.findIndex(({ part, name }) => part === match?.part && name === match.name);
  const isNear = (hz: number): boolean => Math.abs(hz - peak.frequencyHz) <= 2 * peak.frequencySdHz + 1e-6;
  const isChosen = chosenHz !== undefined && isNear(chosenHz);
  const isFinding = findings.some((finding) => finding.run === peak.run && isNear(finding.frequencyHz));
  return {
    peak,
    x: geometry.x(peak.frequencyHz),
    y: geometry.y(levelOf(kind, peak.frequencyHz, peak.amplitudeMps2, share)),
    laneY: geometry.laneY[lane] ?? null,
    style: PART_STYLES[match?.part ?? 'unknown'],
    weight: isChosen ? 'chosen' : isFinding ? 'finding' : 'plain',
  };
}

/** Where a peak's mark, its word and its drop to the lane stand, for what must not be written over them. */
export function peakBoxes(places: readonly PeakPlace[], right: number): Box[] {
  return places.flatMap(({ peak, x, y, laneY, weight }): Box[] => {
    const word = weight === 'plain' ? 0 : wordWidth(frequencyText(peak.frequencyHz), 8) + 12;
    const leftward = isLeftward(x, right);
    const mark = {
      left: x - 8 - (leftward ? word : 0),
      right: x + 8 + (leftward ? 0 : word),
      top: y - 12,
      bottom: y + 8,
    };
    return laneY === null ? [mark] : [mark, { left: x - 2, right: x + 2, top: y, bottom: laneY }];
  });
}

/** Near the right edge a peak's word stands left of it. */
export const isLeftward = (x: number, right: number): boolean => x > right - 60;
