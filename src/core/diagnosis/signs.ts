/**
 * The signs a recording, the vehicle and the story can show. A sign is what was seen, in words; how far it moves a
 * cause stands in weights.ts, and why it does stands with the cause.
 */
export type Sign =
  // direction of the shake
  | 'mostly-vertical'
  | 'mostly-sideways'
  // growth of the level with speed
  | 'falls-with-speed'
  | 'flat-with-speed'
  | 'square-with-speed'
  | 'steep-with-speed'
  // other orders of the same part
  | 'twice-too'
  | 'once-alone'
  | 'once-too'
  | 'twice-alone'
  | 'four-times-too'
  | 'tire-higher-too'
  | 'tire-once-alone'
  | 'tire-once-too'
  | 'tire-higher-alone'
  | 'half-orders-too'
  | 'half-orders-absent'
  | 'firing-too'
  | 'firing-low'
  | 'beats'
  | 'heard'
  // how the run was driven
  | 'low-speed'
  | 'road-speed'
  | 'low-engine-speed'
  | 'engine-speed-not-low'
  | 'found-pulling'
  | 'found-cruising'
  | 'found-braking'
  | 'found-standing'
  // the vehicle
  | 'two-piece'
  | 'double-cardan'
  | 'near-critical'
  | 'near-half-critical'
  | 'far-from-critical'
  | 'converter'
  | 'axle-ratios-apart'
  // how a fixed tone holds its frequency, and where it lies
  | 'narrow-line'
  | 'low-tone'
  | 'middle-tone'
  | 'high-tone'
  | 'mains-tone';
