/** Makes all files in recordings/ again, byte for byte: `npm run recordings`. */
import { writeFileSync } from 'node:fs';
import { DEMO_JOBS } from './recordings/demo-jobs.ts';
import { jobText, readmeText, recordingText } from './recordings/demo-files.ts';

const folder = new URL('../recordings/', import.meta.url);
let bytes = 0;
for (const job of DEMO_JOBS) {
  writeFileSync(new URL(`${job.name}.job.json`, folder), jobText(job));
  for (const run of job.runs) {
    const text = recordingText(run);
    bytes += Buffer.byteLength(text);
    writeFileSync(new URL(run.file, folder), text);
    console.log(`${run.file}: ${Math.round(Buffer.byteLength(text) / 1024)} kB`);
  }
}
writeFileSync(new URL('README.md', folder), readmeText(DEMO_JOBS));
console.log(`${DEMO_JOBS.length} jobs, ${(bytes / 1048576).toFixed(1)} MB`);
