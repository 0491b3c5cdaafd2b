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

/** As many cases as there are cuts; then they begin anew. */
export const TRUNCATIONS = cuts.length;

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
    const sameUnits = cut.value.channels.every(
      ({ axis, mps2PerUnit }, k) =>
        whole.value.channels[k]?.axis === axis && whole.value.channels[k]?.mps2PerUnit === mps2PerUnit,
    );
    must(sameUnits, `${name} cut at ${length}: other axes or units than in the whole file`);
    cut.value.segments[0]!.accelerationMps2.forEach((axis, k) => {
      const full = whole.value.segments[0]!.accelerationMps2[k]!;
      axis.forEach((value, i) =>
        must(value === full[i], `${name} cut at ${length}: sample ${i} is ${value}, not ${full[i]}`),
      );
    });
  },
  show: ({ file, length }) => files[file]!.bytes.subarray(0, length),
});
