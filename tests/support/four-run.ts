/**
 * The worked balance by four runs: 0.40 as found, of which a trial weight of 500 g·mm alone makes 0.30 at 73° (derived, by
 * the law of cosines). As it is typed at the bench.
 */
export const FOUR_RUN_TYPED = {
  unit: 'g·mm',
  base: '0.40',
  weight: '500',
  angle1: '0',
  level1: '0.5658349663',
  angle2: '120',
  level2: '0.6431792957',
  angle3: '240',
  level3: '0.1270873103',
} as const;
