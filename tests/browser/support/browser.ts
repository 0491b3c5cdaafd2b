/** One Chromium for all test files of a worker, a fresh context for each page, and complaints of the page gathered. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll } from 'vitest';
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { findChromium } from '../../support/find-chromium.js';
import type { AppServer } from './serve-app.ts';
import { serveApp } from './serve-app.ts';

/**
 * Off in the browser: what playwright has off (this list takes the place of its own), and the lists under the address
 * bar, which no one sees here and which take a second of processor time for each window.
 */
const FEATURES_OFF = [
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsUpgrades',
  'PaintHolding',
  'ThirdPartyStoragePartitioning',
  'OptimizationHints',
  'NetworkTimeServiceQuerying',
  'PreconnectToSearch',
  'AimEnabled',
  'WebUIOmniboxPopup',
  'WebUIOmniboxAimPopup',
];

const FLAGS = [
  `--disable-features=${FEATURES_OFF.join()}`,
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Said by playwright itself, where a test keeps the offline copy away. */
const BLOCKED_BY_TEST = 'Service Worker registration blocked';

/** How long a step may take where the machine is busy with other things, ms. */
const WAIT_MS = 90_000;

const DESK: BrowserContextOptions = { viewport: { width: 1440, height: 900 } };
export const PHONE: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  isMobile: true,
  hasTouch: true,
  deviceScaleFactor: 2,
};

export interface OpenedPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors and warnings of the page, blocked requests and policy violations among them. */
  readonly complaints: string[];
}

export interface Bench {
  readonly server: AppServer;
  readonly browser: Browser;
  open: (options?: BrowserContextOptions & { hash?: string }) => Promise<OpenedPage>;
  openIn: (context: BrowserContext, hash?: string) => Promise<OpenedPage>;
}

/** As a user's browser is: a store on disk, whose quota counts. (One in memory is not held to it.) Ends with `work`. */
export async function withProfileOnDisk(work: (context: BrowserContext) => Promise<void>): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'perrev-profile-'));
  const context = await chromium.launchPersistentContext(folder, {
    executablePath: findChromium() ?? '/usr/bin/chromium',
    args: FLAGS,
    serviceWorkers: 'block',
    ...DESK,
  });
  try {
    await work(context);
  } finally {
    await context.close();
    await rm(folder, { recursive: true, force: true });
  }
}

/** Started once for all files that a worker takes (they share their modules), and closed when the worker ends. */
let launched: Promise<Browser> | null = null;

/** Starts a server for the test file it is called in, and the browser where none runs yet. */
export function useBrowser(): Bench {
  let browser: Browser | null = null;
  let server: AppServer | null = null;
  beforeAll(async () => {
    server = await serveApp();
    launched ??= chromium.launch({ executablePath: findChromium() ?? '/usr/bin/chromium', args: FLAGS });
    browser = await launched;
  });
  afterAll(async () => {
    await Promise.all((browser?.contexts() ?? []).map((context) => context.close()));
    await server?.close();
  });
  const running = <T>(thing: T | null): T => {
    if (thing === null) throw new Error('used before the tests began');
    return thing;
  };
  const openIn = async (context: BrowserContext, hash = ''): Promise<OpenedPage> => {
    const page = await context.newPage();
    page.setDefaultTimeout(WAIT_MS);
    const complaints: string[] = [];
    page.on('console', (message) => {
      const isComplaint = message.type() === 'error' || message.type() === 'warning';
      if (isComplaint && !message.text().includes(BLOCKED_BY_TEST)) complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(error.message));
    await page.goto(running(server).url + hash);
    return { page, context, complaints };
  };
  return {
    get server() {
      return running(server);
    },
    get browser() {
      return running(browser);
    },
    openIn,
    open: async ({ hash = '', ...options } = {}) => {
      const context = await running(browser).newContext({
        locale: 'en-US',
        colorScheme: 'light',
        // The offline copy has a test of its own; elsewhere it would only take time.
        serviceWorkers: 'block',
        ...DESK,
        ...options,
      });
      return openIn(context, hash);
    },
  };
}
