import { execFileSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

const names = ['chromium', 'chromium-browser', 'google-chrome'];

const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Starts the Chromium of this machine, without a window. */
export function launchChromium(): Promise<Browser> {
  return chromium.launch({ executablePath: findChromium(), headless: true, args: flags });
}

/** CHROMIUM, else the first of the usual names on the path, else Debian's package where this account may install it. */
function findChromium(): string {
  const found = process.env.CHROMIUM ?? names.map(onPath).find((path) => path !== null);
  if (found) return found;
  if (installDebianChromium()) {
    const installed = onPath('chromium');
    if (installed) return installed;
  }
  throw new Error('No Chromium was found: install the package "chromium", or set CHROMIUM to the path of one.');
}

function onPath(name: string): string | null {
  const folders = [...(process.env.PATH ?? '').split(delimiter), '/usr/bin'];
  return folders.map((folder) => join(folder, name)).find(isProgram) ?? null;
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function installDebianChromium(): boolean {
  if (process.getuid?.() !== 0 || onPath('apt-get') === null) return false;
  try {
    execFileSync('apt-get', ['update', '-q'], { stdio: 'ignore' });
    execFileSync('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}
