/** Double-Cardan shafts of lifted vehicles: where the pinion belongs. Common practice, no source; signs by hand. */
import { describe, expect, it } from 'vitest';
import { angleWhatIf } from '../../../../src/core/driveline/angles/angle-what-if.ts';
import { workingAngles } from '../../../../src/core/driveline/angles/working-angles.ts';
import type { WorkingAnglesInput } from '../../../../src/core/driveline/angles/working-angles.ts';
import { cancelsText } from '../../../../src/core/report/angle-change-text.ts';
import { must } from '../../../support/must.ts';

/** Transfer case 2° down, shaft 22° down; nose of the pinion 5° up: 17° short of the shaft. */
const LIFTED_REAR: WorkingAnglesInput = {
  shafts: [
    { part: 'transfer-case', slopeDeg: 2 },
    { part: 'shaft', slopeDeg: 22 },
    { part: 'pinion', slopeDeg: 5 },
  ],
  joints: ['double-cardan', 'cross'],
  driveshaftRpm: 2800,
};
/** Front axle: the shaft rises 15° to the rear, the pinion's nose, its rear end, only 10°. */
const FRONT: WorkingAnglesInput = {
  shafts: [
    { part: 'pinion', slopeDeg: -10 },
    { part: 'shaft', slopeDeg: -15 },
    { part: 'transfer-case', slopeDeg: -3 },
  ],
  joints: ['cross', 'double-cardan'],
  driveshaftRpm: 2800,
};
const noteOf = (input: WorkingAnglesInput, code: string): string | undefined =>
  must(workingAngles(input)).notes.find((note) => note.code === code)?.text;

describe('a single-joint pinion below a double-Cardan joint', () => {
  it('is told how far it is off the shaft, and which way to turn it', () => {
    expect(noteOf(LIFTED_REAR, 'pinion-along-shaft')).toMatch(/17\.0° off the shaft: turn its nose up\.$/u);
    expect(noteOf(FRONT, 'pinion-along-shaft')).toMatch(/5\.0° off the shaft: turn its nose up\.$/u);
    const steep = { ...FRONT, shafts: [{ part: 'pinion', slopeDeg: -20 } as const, ...FRONT.shafts.slice(1)] };
    expect(noteOf(steep, 'pinion-along-shaft')).toMatch(/turn its nose down\.$/u);
  });

  it('is not told so where it points along the shaft', () => {
    const along = {
      ...LIFTED_REAR,
      shafts: [...LIFTED_REAR.shafts.slice(0, 2), { part: 'pinion', slopeDeg: 21 } as const],
    };
    expect(noteOf(along, 'pinion-along-shaft')).not.toContain('off the shaft');
  });

  it('carries the steering axis along on a front axle', () => {
    expect(noteOf(FRONT, 'caster-turns-along')).toContain('caster');
    expect(noteOf(LIFTED_REAR, 'caster-turns-along')).toBeUndefined();
  });

  it('names each half of the double-Cardan joint once', () => {
    const titles = must(workingAngles(LIFTED_REAR)).advisory.map(({ title }) => title);
    expect(new Set(titles).size).toBe(titles.length);
  });

  it('is offered no change that does nothing: forks do not matter where one end is even by itself', () => {
    const { single } = must(angleWhatIf(LIFTED_REAR, {}));
    expect(single.length).toBeGreaterThan(0);
    expect(single.flatMap(({ changes }) => changes).every(({ kind }) => kind !== 'phasing')).toBe(true);
  });
});

// Cross carries a pure couple along its plane normal (Seherr-Thoss et al.): a loaded joint shakes its supports at 2× even where speed ripple cancels.
it('a launch with large angles that cancel is told that they bend under torque', () => {
  const launch = must(
    workingAngles({
      shafts: [
        { part: 'transmission', slopeDeg: 2 },
        { part: 'shaft', slopeDeg: 3.5 },
        { part: 'shaft', slopeDeg: 9.5 },
        { part: 'pinion', slopeDeg: 4 },
      ],
      driveshaftRpm: 1200,
    }),
  );
  expect(cancelsText(launch)).toContain('bend their shafts twice a turn under torque');
});
