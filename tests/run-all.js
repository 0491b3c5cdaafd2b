// The whole test command: type check, lint, build, unit and command-line tests, browser tests.
// Goes on after a failure, so that one run tells all; ends with one line 'N passed, N failed'.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureChromium } from './support/find-chromium.js';

process.chdir(new URL('..', import.meta.url).pathname);
const scratch = mkdtempSync(join(tmpdir(), 'perrev-tests-'));
const env = { ...process.env, TZ: 'UTC', LC_ALL: 'C', FORCE_COLOR: '0' };
let passed = 0;
let failed = 0;

function run(title, command, args) {
  const start = process.hrtime.bigint();
  console.log(`\n── ${title}`);
  const { status } = spawnSync(command, args, { stdio: 'inherit', env });
  const seconds = Number(process.hrtime.bigint() - start) / 1e9;
  console.log(`── ${title}: ${status === 0 ? 'passed' : 'FAILED'} in ${seconds.toFixed(0)} s`);
  return status === 0;
}

/** Steps that are one test each, all at once: what each of them says is told together when it ends. */
async function sideBySide(steps) {
  const start = process.hrtime.bigint();
  const tell = (title, ok, said) => {
    const seconds = Number(process.hrtime.bigint() - start) / 1e9;
    console.log(`\n── ${title}\n${said}── ${title}: ${ok ? 'passed' : 'FAILED'} after ${seconds.toFixed(0)} s`);
    if (ok) passed += 1;
    else failed += 1;
  };
  const ended = steps.map(
    ([title, command, ...args]) =>
      new Promise((done) => {
        const said = [];
        const child = spawn(command, args, { stdio: ['ignore', 'pipe', 'pipe'], env });
        child.stdout.on('data', (bytes) => said.push(bytes));
        child.stderr.on('data', (bytes) => said.push(bytes));
        child.on('close', (status) => done(tell(title, status === 0, Buffer.concat(said).toString())));
      }),
  );
  await Promise.all(ended);
}

/** A vitest run, counted test by test from its JSON report. */
function vitest(title, config) {
  const report = join(scratch, `${title.replaceAll(' ', '-')}.json`);
  const ok = run(title, 'npx', [
    'vitest',
    'run',
    '--config',
    config,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ]);
  if (!existsSync(report)) {
    failed += 1;
    return;
  }
  const { numPassedTests, numFailedTests, numPendingTests } = JSON.parse(readFileSync(report, 'utf8'));
  passed += numPassedTests;
  failed += numFailedTests + numPendingTests;
  // A file that fails to load counts no test as failed, yet the run has failed.
  if (!ok && numFailedTests === 0) failed += 1;
}

await sideBySide([
  // It checks every file of the project, components or not, as the compiler would.
  ['types', 'npx', 'svelte-check', '--fail-on-warnings', '--tsconfig', './tsconfig.json', '--output', 'human'],
  ['lint', 'npm', 'run', '--silent', 'lint'],
  ['build', 'npm', 'run', '--silent', 'build'],
]);
vitest('unit and command-line tests', 'tests/vitest.config.ts');
const chromium = ensureChromium(console.log);
if (chromium) {
  env.CHROMIUM_PATH = chromium;
  vitest('browser tests', 'tests/browser/vitest.config.ts');
} else {
  failed += 1;
}

rmSync(scratch, { recursive: true, force: true });
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
