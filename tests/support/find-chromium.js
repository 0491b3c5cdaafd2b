// Finds a Chromium for the browser tests; on Debian as root, installs it.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** Path of a Chromium-family browser, or null. CHROMIUM_PATH wins. */
export function findChromium() {
  const given = process.env.CHROMIUM_PATH;
  if (given && existsSync(given)) return given;
  for (const name of NAMES) {
    const { status, stdout } = spawnSync('sh', ['-c', `command -v ${name}`], { encoding: 'utf8' });
    if (status === 0 && stdout.trim() !== '') return stdout.trim();
  }
  return null;
}

/** Finds one, or installs Debian's; null (after saying in one line what to install) where neither works. */
export function ensureChromium(log = console.error) {
  const found = findChromium();
  if (found) return found;
  if (existsSync('/etc/debian_version') && process.getuid?.() === 0) {
    log('No Chromium found: installing it with apt-get (package chromium)…');
    const quiet = { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
    spawnSync('apt-get', ['update'], quiet);
    spawnSync('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], quiet);
    const installed = findChromium();
    if (installed) return installed;
  }
  log('The browser tests need Chromium: install it (Debian or Ubuntu: apt-get install chromium) or set CHROMIUM_PATH.');
  return null;
}
