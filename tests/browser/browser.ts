import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';
import type { Browser } from 'playwright-core';

const places = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', '/usr/bin/google-chrome-stable', '/snap/bin/chromium', '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome', 'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe'];

/** Path of a Chromium or Chrome: CHROMIUM names one, else the usual places; on Debian as root it is installed. */
export function findBrowser(): string {
  const named = process.env.CHROMIUM;
  const found = named ? [named].find(existsSync) : places.find(existsSync);
  if (found) return found;
  if (!named && existsSync('/etc/debian_version') && process.getuid?.() === 0) {
    process.stdout.write('No Chromium here: installing Debian’s.\n');
    execFileSync('apt-get', ['update', '-qq'], { stdio: 'inherit' });
    execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], { stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
    if (existsSync('/usr/bin/chromium')) return '/usr/bin/chromium';
  }
  throw new Error('The browser tests need Chromium or Chrome: install one, or set CHROMIUM to its path.');
}

export function launch(): Promise<Browser> {
  return chromium.launch({ executablePath: findBrowser(), args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--no-first-run', '--disable-quic'] });
}
