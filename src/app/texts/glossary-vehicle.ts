/** Words that the vehicle's and the bench's forms ask by; the rest of the glossary stands beside this file. */
export const vehicleGlossary = {
  'axle-ratio': {
    term: 'Axle ratio',
    text: 'How often the driveshaft turns for one turn of the wheels: ring gear teeth divided by pinion teeth. It stands on a tag on the axle or in the build sheet.',
    source: 'derived',
  },
  'final-drive': {
    term: 'Final drive',
    text: 'The last pair of gears before the half shafts. Its ratio is what goes into it for one turn of the wheels.',
  },
  'rolling-circumference': {
    term: 'Rolling circumference',
    text: 'How far the vehicle rolls in one turn of a wheel. Under load it is a little less than the tire’s outer circumference.',
  },
  'transfer-case': {
    term: 'Transfer case',
    text: 'The gearbox behind the transmission that drives both axles. In low range it slows the driveshafts by its ratio.',
  },
  'gear-ratio': {
    term: 'Gear ratio',
    text: 'Engine turns for one turn of the transmission’s output shaft. Direct gear is 1, an overdrive is below 1.',
  },
  'firing-order': {
    term: 'Firing order',
    text: 'How often the engine fires in one turn of the crankshaft: half as often as it has cylinders, as a four-stroke fires each once in two turns. Eight cylinders give engine 4×.',
    source: 'derived, for a four-stroke engine that fires evenly',
  },
  'gear-mesh': {
    term: 'Gear mesh',
    text: 'Each tooth that meets its partner gives a push. The tone is at teeth times turning speed of the same gear: a pinion of 11 teeth gives pinion 11×.',
    source: 'derived',
  },
  'pole-pairs': {
    term: 'Pole pairs',
    text: 'North and south poles of a motor, counted in pairs. The current goes through that many cycles in one turn of the motor.',
    source: 'derived',
  },
  sideways: {
    term: 'Sideways angle',
    text: 'How a part points to the side, seen from above. A joint works at slope and sideways angle together.',
    source: 'derived',
  },
  'dial-movement': {
    term: 'Whole movement of the dial',
    text: 'Greatest reading minus least in one full turn. A round part that sits off center moves the dial twice as far as it is off.',
    source: 'derived',
  },
  ear: {
    term: 'Yoke ears',
    text: 'The two arms of a yoke, with the bores that hold the bearing cups. Bent or spread, they hold the cross off center.',
  },
  'center-bearing': {
    term: 'Center bearing',
    text: 'The bearing in rubber that carries a driveshaft of several pieces where they meet.',
  },
} as const;
