/**
 * The words of the trade that the screens use, each in a sentence or two, with where the word or figure comes from
 * where that is known. Shaft words are those of SAE J901, vibration words those of ISO 2041, balancing words those of
 * ISO 21940.
 */

import { vehicleGlossary } from './glossary-vehicle.ts';

export interface GlossaryEntry {
  readonly term: string;
  readonly text: string;
  readonly source?: string;
}

const J901 = 'word after SAE J901';
const ISO_2041 = 'word after ISO 2041:2018';
const BALANCE_WORDS = 'word after ISO 21940-2:2017 (from memory)';

export const glossary = {
  order: {
    term: 'Order',
    text: 'How often something happens in one turn of a named part. Driveshaft 2× is twice in each turn of the driveshaft, whatever the speed.',
    source: 'notation as in ISO 13373 (from memory)',
  },
  line: {
    term: 'Line',
    text: 'Where an order is expected in the spectrum, with its uncertainty: turning speed times order.',
  },
  peak: {
    term: 'Peak',
    text: 'What the recording shows: a frequency at which it stands clearly above the floor of noise.',
  },
  spectrum: {
    term: 'Spectrum',
    text: 'A recording sorted by frequency: how much motion there is at each.',
    source: ISO_2041,
  },
  felt: {
    term: 'Felt level',
    text: 'Level in multiples of what a person just feels: 1 is just felt. Weighted by frequency and direction as a seat passes it on.',
    source: 'weighting and threshold of ISO 2631-1:1997',
  },
  map: {
    term: 'Map of frequency over time',
    text: 'One spectrum after the other, stacked in time. What turns with the wheels wanders with the speed, a fixed tone stands still.',
  },
  waterfall: {
    term: 'Waterfall',
    text: 'Spectra drawn one above the other by speed. An order leans along its line, a resonance stands at one frequency.',
  },
  uncertainty: {
    term: 'Standard uncertainty',
    text: 'How far off a value may well be: about two out of three times it is nearer than that, nineteen out of twenty times nearer than twice that.',
    source: 'word after the Guide to the Expression of Uncertainty in Measurement, for a normal distribution',
  },
  'false-alarm': {
    term: 'False alarm',
    text: 'A peak that noise made by chance. The smaller its chance, the surer it is that something really shook.',
  },
  'noise-floor': {
    term: 'Noise floor',
    text: 'The level of road, wind and sensor noise around a peak. A peak 10 dB above it has about three times its amplitude.',
    source: 'derived: 10 dB is a factor of 3.16 in amplitude',
  },
  doubt: {
    term: 'Doubt',
    text: 'How far the causes are from being told apart, counted in bits: one bit is the doubt between two that are equally likely. The check that settles most of it for its time comes first.',
    source: 'C. E. Shannon, Bell System Technical Journal 27, 1948 (from memory)',
  },
  alias: {
    term: 'Alias',
    text: 'A false line: a motion faster than half the sampling rate shows up folded back below it.',
    source: 'derived',
  },
  'sampling-rate': {
    term: 'Sampling rate',
    text: 'How many readings a recorder takes in a second. Nothing above half of it can be seen truly.',
  },
  window: {
    term: 'Window',
    text: 'How a piece of recording is faded in and out before its spectrum is made. It decides how near two lines may stand and how little of one leaks into the next.',
    source: 'F. J. Harris, Proc. IEEE 66(1), 1978',
  },
  'joint-angle': {
    term: 'True joint angle',
    text: 'The angle between two shafts in space, from slope and sideways angle together. It is what the joint works at.',
    source: 'derived',
  },
  cross: {
    term: 'Cross',
    text: 'The four-armed piece of a universal joint. Its arms are the trunnions.',
    source: J901,
  },
  cup: {
    term: 'Bearing cup',
    text: 'The cap with needles that sits on a trunnion and in the ear of the yoke.',
    source: J901,
  },
  'double-cardan': {
    term: 'Double-Cardan joint',
    text: 'Two crosses with a centering device between them that halves the angle, so that what one does the other undoes.',
    source: J901,
  },
  'working-angle': {
    term: 'Working angle',
    text: 'The angle at which a joint turns: that between the two shafts it joins. The larger, the more unevenly it drives, twice in each turn.',
    source: J901,
  },
  'companion-flange': {
    term: 'Companion flange',
    text: 'The flange on pinion or transmission that the shaft is bolted to.',
    source: J901,
  },
  'slip-yoke': {
    term: 'Slip yoke',
    text: 'The yoke that slides on a spline and lets the shaft grow and shrink with the suspension.',
    source: J901,
  },
  residual: {
    term: 'Residual',
    text: 'What the joints of a driveline do not cancel at its far end, as the angle of one joint that would do the same and as peak angular acceleration. It shakes at driveshaft 2×.',
    source: 'derived; limits are common practice, no source',
  },
  inertia: {
    term: 'Inertia on drive and coast',
    text: 'The shaft between two joints turns unevenly even where the far end does not. On drive the front end is steady, on coast the rear: this is the peak acceleration of the most uneven piece.',
    source: 'derived; limits are common practice, no source',
  },
  couple: {
    term: 'Bending couple',
    text: 'A joint under torque tries to bend its shafts straight: half of it stands still, half turns at twice shaft speed and shakes the supports, even where the angles cancel.',
    source: 'derived; see T. D. Gillespie, Fundamentals of Vehicle Dynamics, ride chapter (from memory)',
  },
  phasing: {
    term: 'Fork phasing',
    text: 'How the two forks of a shaft piece stand to each other. In line they let two joints cancel; a spline tooth off spoils it.',
    source: J901,
  },
  'wind-up': {
    term: 'Pinion wind-up',
    text: 'Drive torque turns the axle housing and lifts the front end of the pinion, which changes the last joint’s angle.',
  },
  'ride-height': {
    term: 'Ride height',
    text: 'How high the vehicle stands with its weight on the wheels. Angles count only there.',
  },
  'end-play': {
    term: 'End play',
    text: 'How far a cross can move along one of its axes. Too much lets the shaft sit off center, none at all makes the joint bind.',
    source: 'common practice, no source',
  },
  rings: {
    term: 'Retaining rings',
    text: 'The rings that hold the cups in the ears. A pair of unequal thickness holds the joint off center by half their difference.',
    source: 'derived',
  },
  unbalance: {
    term: 'Unbalance',
    text: 'Mass times its distance from the axis it turns about, in g·mm or oz·in. Its force grows with the square of speed.',
    source: BALANCE_WORDS,
  },
  allowance: {
    term: 'Balance allowance',
    text: 'The unbalance a standard lets a part keep: grade times mass over turning speed, half of it in each of two planes.',
    source: 'ISO 21940-11:2016',
  },
  grade: {
    term: 'Balance grade',
    text: 'How good a balance is asked for, in mm/s. G 16 and G 40 are both named for driveshafts.',
    source: 'ISO 21940-11:2016',
  },
  runout: {
    term: 'Runout',
    text: 'How far a surface moves under a dial in one turn. Its once-round part is a part off center or bent.',
    source: 'limits are common practice, no source',
  },
  ovality: {
    term: 'Ovality',
    text: 'The twice-round part of dial readings: the surface is out of round. Turning the part on its seat does not cure it.',
  },
  'high-spot': {
    term: 'High spot',
    text: 'Where the once-round part of dial readings is greatest, in degrees from the mark.',
  },
  reindexing: {
    term: 'Turning the shaft on its flange',
    text: 'Runout of flange and shaft add up as arrows. Turned on by some bolts only the shaft’s arrow turns, and one position leaves least.',
    source: 'derived',
  },
  'trial-weight': {
    term: 'Trial weight',
    text: 'A known weight at a known place, to see what it does. From that follows what the right one must be.',
    source: BALANCE_WORDS,
  },
  phase: {
    term: 'Phase',
    text: 'When in a turn the vibration is greatest, in degrees from a mark on the part.',
    source: ISO_2041,
  },
  plane: {
    term: 'Correction plane',
    text: 'A place along the part, square to its axis, where weight can be added.',
    source: BALANCE_WORDS,
  },
  consistency: {
    term: 'Consistency',
    text: 'How well runs without phase fit one rotor: 1 is perfect. Outside about 0.8 to 1.2 something changed between the runs.',
    source: 'derived; the bounds are common practice, no source',
  },
  correction: {
    term: 'Correction',
    text: 'The weight to add and where, so that what was there and what is added cancel.',
    source:
      'with phase after T. P. Goodman, ASME J. Eng. Ind. 86, 1964; circles after I. J. Somervaille, Engineering, 1954 (both from memory)',
  },
  'critical-speed': {
    term: 'Critical speed',
    text: 'Speed at which a shaft bends itself like a skipping rope. Near it the bow grows until something gives.',
    source: 'derived; agrees with Machinery’s Handbook within 0.11 %',
  },
  'half-critical': {
    term: 'Half-critical speed',
    text: 'At half the critical speed the 2× of the joints meets the shaft’s own bending, and it shakes there too.',
    source: 'derived',
  },
  ...vehicleGlossary,
} as const satisfies Record<string, GlossaryEntry>;

export type TermId = keyof typeof glossary;

export const glossaryWords = {
  title: 'Words of the trade',
  lead: 'Each word in a sentence or two, with where it comes from.',
  help: (term: string) => `What is “${term}”?`,
  close: 'Close',
  here: 'Words used here',
  source: (source: string) => `Source: ${source}.`,
} as const;
