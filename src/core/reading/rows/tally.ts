/** How many rows or cells were not what the layout promised, and the line of the first. */
export interface Tally {
  count: number;
  firstLine: number;
}
export const tally = (): Tally => ({ count: 0, firstLine: 0 });
export const add = (to: Tally, line: number): void => {
  if (to.count === 0) to.firstLine = line;
  to.count++;
};
