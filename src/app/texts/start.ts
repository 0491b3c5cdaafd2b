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
  elapsed: (text: string) => `${text} so far`,
  steps: {
    reading: 'Reading the recordings',
    spectra: 'Making the spectra',
    speed: 'Finding the speed the recording itself implies',
    matching: 'Matching what shook with what turns',
    report: 'Writing the answer',
  },
  failed: 'This did not work',
  whatToDo: 'What to do',
  backToForm: 'Back to the form',
  tryAgain: 'Try again',
  where: { file: 'File', line: 'line', column: 'column', key: 'entry' },
} as const;
