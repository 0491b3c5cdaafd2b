/** Small files cut at every byte: what is read of the rest is what the whole file says, to the bit. */
import { gzipSync } from 'node:zlib';
import { seedFiles } from '../csv-seeds.ts';
import { checkProblem, checkRecording } from '../invariants.ts';
import { must, target } from '../target.ts';
import { readBytes } from './reader.ts';

const files = seedFiles(24).flatMap(({ text, layout }) => [
  { name: layout.name, bytes: Buffer.from(text) },
  { name: `${layout.name}, packed`, bytes: gzipSync(text) },
]);
const cuts = files.flatMap(({ bytes }, file) =>
  Array.from({ length: bytes.length }, (_, length) => ({ file, length })),
);

/** Over as many cases as there are cuts they are all made; then they begin anew. */
export const truncation = target<{ file: number; length: number }>({
  name: 'truncation',
  cases: 400,
  make: (_, index) => cuts[(index * 7919) % cuts.length]!,
  check: async ({ file, length }) => {
    const { bytes, name } = files[file]!;
    const cut = await readBytes(bytes.subarray(0, length));
    if (!cut.ok) return checkProblem(cut.problem, bytes.toString('latin1'));
    checkRecording(cut.value);
    const whole = await readBytes(bytes);
    must(whole.ok, `${name}: the whole file is refused`);
    const channels = whole.value.channels;
    // The scale of raw counts is measured by gravity, in the rows there are.
    const slack = (k: number): number => (channels[k]!.unit === 'counts' ? 0.04 : 0);
    const sameUnits = cut.value.channels.every(
      ({ axis, mps2PerUnit }, k) =>
        channels[k]?.axis === axis && Math.abs(mps2PerUnit / channels[k].mps2PerUnit - 1) <= slack(k),
    );
    must(sameUnits, `${name} cut at ${length}: other axes or units than in the whole file`);
    cut.value.segments[0]!.accelerationMps2.forEach((axis, k) => {
      const full = whole.value.segments[0]!.accelerationMps2[k]!;
      axis.forEach((value, i) =>
        must(
          Math.abs(value - full[i]!) <= slack(k) * Math.abs(full[i]!),
          `${name} cut at ${length}: sample ${i} is ${value}, not ${full[i]}`,
        ),
      );
    });
  },
  show: ({ file, length }) => files[file]!.bytes.subarray(0, length),
});
