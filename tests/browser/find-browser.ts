import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { packedChromium, type Browser } from './packed-chromium';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** What every browser is started with: no sandbox (a container has none to give), no own errands. */
export const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const NONE = `No browser was found for the browser tests. One of these ways gives one:
  1. npx playwright install chromium   (about 150 MB; on Linux add --with-deps)
  2. Install Chrome, Chromium or Edge in the usual way.
  3. Name one that you have: BROWSER_PATH=/path/to/browser npm test`;

/** Places where a machine keeps Chrome, Chromium or Edge, the likeliest first. */
export function usualPlaces(platform: NodeJS.Platform, env: NodeJS.ProcessEnv): string[] {
  if (platform === 'darwin') {
    const apps = ['Google Chrome', 'Chromium', 'Microsoft Edge'];
    return apps.map((app) => `/Applications/${app}.app/Contents/MacOS/${app}`);
  }
  if (platform === 'win32') {
    const homes = [env.ProgramFiles, env['ProgramFiles(x86)'], env.LOCALAPPDATA].filter(Boolean);
    const apps = ['Google/Chrome/Application/chrome.exe', 'Microsoft/Edge/Application/msedge.exe'];
    return apps.flatMap((app) => homes.map((home) => join(home ?? '', app)));
  }
  const names = [
    'google-chrome-stable',
    'google-chrome',
    'chromium',
    'chromium-browser',
    'microsoft-edge-stable',
    'microsoft-edge',
  ];
  const folders = (env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return names.flatMap((name) => folders.map((folder) => join(folder, name)));
}

/** Whether a browser runs: some systems put a stub in its place that only asks to install it. */
function runs(path: string, env: Readonly<Record<string, string>> = {}): boolean {
  if (process.platform === 'win32') return true; // There `--version` would open a window.
  const tried = spawnSync(path, ['--version', '--no-sandbox'], {
    env: { ...process.env, ...env },
    timeout: 20_000,
  });
  return tried.status === 0;
}

/**
 * The browser for the tests: BROWSER_PATH, Playwright's own, one of the machine, the one inside an
 * npm package (Linux on x64), Playwright's download (not in CI). None is an error, never a skip.
 */
export async function findBrowser(): Promise<Browser> {
  const named = process.env.BROWSER_PATH;
  if (named !== undefined && named !== '') {
    if (existsSync(named)) return { path: named, env: {}, from: 'BROWSER_PATH' };
    throw new Error(`BROWSER_PATH names ${named}, where there is no file.`);
  }
  const own = chromium.executablePath();
  if (existsSync(own)) return { path: own, env: {}, from: 'Playwright' };
  const usual = usualPlaces(process.platform, process.env).find((p) => existsSync(p) && runs(p));
  if (usual !== undefined) return { path: usual, env: {}, from: 'this machine' };
  if (process.platform === 'linux' && process.arch === 'x64') {
    const packed = await packedChromium(join(root, '.cache'));
    // With the machine's own libraries where it has them, else with those in the package.
    if (runs(packed.path)) return { ...packed, env: fontsOnly(packed.env) };
    if (runs(packed.path, packed.env)) return packed;
  } else if (process.env.CI === undefined) {
    console.log('· no browser found: fetching one with Playwright (about 150 MB, once) …');
    const cli = join(dirname(createRequire(import.meta.url).resolve('@playwright/test')), 'cli.js');
    spawnSync(process.execPath, [cli, 'install', 'chromium'], { stdio: 'inherit' });
    if (existsSync(own)) return { path: own, env: {}, from: 'Playwright' };
  }
  throw new Error(NONE);
}

function fontsOnly(env: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(Object.entries(env).filter(([name]) => name === 'FONTCONFIG_FILE'));
}
