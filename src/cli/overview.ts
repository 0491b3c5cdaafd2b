/** The text behind `perrev --help`. */
import type { Command } from './io.ts';

declare const __PERREV_VERSION__: string;
export const version: string = typeof __PERREV_VERSION__ === 'string' ? __PERREV_VERSION__ : 'unbuilt';

export function overview(commands: readonly Command[]): string {
  const width = Math.max(...commands.map(({ name }) => name.length));
  return `perrev: from an accelerometer recording to the rotating part that shakes, and what to measure about it

  perrev diagnose recording.csv --tire 265/70R17 --axle 3.73 --gear 0.70 --cylinders 8 --speed 62mph
  perrev diagnose recordings/joint-replaced.job.json --page sheet.html

Commands:
${commands.map(({ name, summary }) => `  ${name.padEnd(width)}  ${summary}`).join('\n')}

perrev COMMAND --help tells its options. Exit status: 0 done, 1 a recording could not be read or
analysed, 2 wrong usage. Results rank causes; they do not clear a vehicle as safe.
`;
}
