/** Words of the screens before the answer: nothing yet, working, failed. */
export const start = {
  headline: 'What shakes, and which part turns at that rate?',
  lead:
    'Give perrev a recording from any accelerometer logger, the tire size, the axle ratio and the road speed. ' +
    'It answers with the part, the likeliest causes and the next thing to measure.',
  drop: 'Drop recordings here',
  dropMore: 'Drop more recordings here',
  dropNow: 'Let go to open',
  dropHint: 'CSV or other delimited text, plain or gzipped. A job file may come along.',
  open: 'Open recordings',
  recordHere: 'Record with this device',
  demo: 'Try a demo job',
  demoWith: (count: number) => (count === 1 ? '1 recording' : `${count} recordings`),
  demosFailed: 'The demo jobs could not be loaded. Your own recordings can be opened all the same.',
  private: 'Nothing leaves this device: reading and analysis happen in this page.',
  working: 'Working on it',
  timeLeft: (text: string) => `about ${text} left`,
  timeLeftUnknown: 'working out how long it takes',
  steps: {
    reading: 'Reading the recordings',
    spectra: 'Making the spectra',
    speed: 'Finding the speed the recording itself implies',
    matching: 'Matching what shook with what turns',
    report: 'Writing the answer',
  },
  refused: 'Not everything was opened',
  jobRefused: 'The job file was not opened',
  openWithoutJob: (count: number) => `Open the ${count === 1 ? 'recording' : 'recordings'} without it`,
  openAnyway: (count: number) => `Add ${count === 1 ? 'it' : 'them'} to the open job`,
  notNamed: (names: readonly string[]) =>
    names.length === 1 ? `No opened job names ${names[0]}.` : `No opened job names these: ${names.join(', ')}.`,
  notNamedRemedy: (count: number) =>
    `Left out, as it is not known which job ${count === 1 ? 'it belongs' : 'they belong'} to.`,
  alsoOpened: (names: readonly string[]) => `Also opened and put into the job book: ${names.join('; ')}.`,
  failed: 'This did not work',
  backToForm: 'Back to the form',
  tryAgain: 'Try again',
  where: { line: 'line', column: 'column' },
} as const;
