/** Words in and around the pictures. */
export const charts = {
  spectrum: 'What shook, and what turns at that rate',
  spectrumAbout: {
    mouse: 'All axes together. Point at it, or use the keys, to read frequency, level and orders.',
    touch: 'All axes together. Tap it to read frequency, level and orders.',
  },
  spectrumSummary: (from: string, to: string, strongest: string) =>
    `Spectrum from ${from} to ${to}. ${strongest} Below it, one lane for each part shows where its orders are expected.`,
  strongest: (frequency: string, label: string, felt: string) =>
    `Strongest: ${frequency}, ${label}, felt level ${felt}.`,
  strongestNone: 'No peak stands above the noise floor.',
  map: 'Does it follow the speed?',
  mapAbout: (isDark: boolean) =>
    `Time upward, frequency across, ${isDark ? 'lighter' : 'darker'} is stronger; orders are drawn over it.`,
  mapSummary: (from: string, to: string, seconds: string) =>
    `Map of level over frequency, ${from} to ${to}, and ${seconds} of time. Order tracks are drawn over it.`,
  byAngle: 'Speed taken out',
  orderSpectrumAbout: {
    mouse: 'Changes of speed are taken out; frequencies are those at the mean speed. Point at it to read it.',
    touch: 'Changes of speed are taken out; frequencies are those at the mean speed. Tap it to read it.',
  },
  waterfall: 'Spectrum at each speed',
  waterfallAbout: 'One trace for each speed, slowest at the bottom. What follows a part leans along its line.',
  waterfallSummary: (count: number) =>
    `Spectra at ${count} speeds, slowest at the bottom, with the matched orders drawn over them.`,
  runs: 'All runs side by side',
  runsAbout: (part: string) => `Each run on a scale of ${part} orders: what follows the ${part} stands in one column.`,
  runsAboutHz: 'Each run over frequency: what does not follow the speed stands in one column.',
  runsSummary: (count: number, label: string) =>
    `Spectra of ${count} runs, one above the other; ${label} is marked in all.`,
  runColumns: { run: 'Run' },
  level: 'Level',
  levels: { felt: 'Felt level', acceleration: 'Acceleration', velocity: 'Velocity', 'velocity-inches': 'Velocity' },
  units: { felt: '', acceleration: 'm/s²', velocity: 'mm/s', 'velocity-inches': 'in/s' },
  justFelt: 'just felt',
  /** Where no turning part has a line. */
  belowLines: 'road and body',
  cursor: 'Cursor',
  cursorHint: 'Arrow keys move it, N and P go to the next and previous peak, + and − zoom, 0 shows all.',
  cursorNone: 'Point at the chart to read frequency, turning speed and orders.',
  moveHint: {
    mouse: 'Hold Shift and drag to move along; drag a stretch to look closer at it.',
    touch: 'Two fingers move along and look closer.',
  },
  zoomIn: 'Zoom in',
  zoomOut: 'Zoom out',
  zoomAll: 'Show all',
  numbers: 'Numbers behind this picture',
  saveSvg: 'Save as SVG',
  savePng: 'Save as PNG',
  parts: {
    tire: 'Tire',
    driveshaft: 'Driveshaft',
    engine: 'Engine',
    'half-shaft': 'Half-shaft',
    accessory: 'Accessory',
    fixed: 'Fixed tone',
    unknown: 'Unknown',
  },
  unseen: (labels: string) => `Above half the sampling rate, so seen here by their images at the most: ${labels}.`,
  image: (label: string) => `image of ${label}`,
  /** Between the names of tracks that cannot be told apart. */
  or: ' or ',
  peakColumns: { frequency: 'Frequency', level: 'Level', felt: 'Felt level', origin: 'Most likely', chance: 'Chance' },
  mapColumns: { time: 'Time', order: 'Order', level: 'Level' },
  axisFrequency: 'Hz',
  axisTime: 's',
} as const;
