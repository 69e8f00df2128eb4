/**
 * Finds a Chromium for the browser tests, the sweep and the bench: the environment variable CHROMIUM_PATH, an installed
 * Chromium or Chrome, Playwright's own, and at last Debian's package when run as root there.
 */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from '@playwright/test';
import { findChromium, isExecutable } from '../../src/cli/find-chromium';

/** Arguments that make a headless Chromium quiet and independent of graphics hardware. */
export const BROWSER_ARGUMENTS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const installed = (): string | null => findChromium({ PATH: process.env.PATH });

function playwrightsOwn(): string | null {
  const path = chromium.executablePath();
  return path && isExecutable(path) ? path : null;
}

function fromDebian(): string | null {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return null;
  const quiet = { stdio: ['ignore', 'ignore', 'inherit'] as const, env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
  try {
    execFileSync('apt-get', ['update'], { ...quiet, stdio: [...quiet.stdio] });
    execFileSync('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], { ...quiet, stdio: [...quiet.stdio] });
  } catch {
    return null;
  }
  return installed();
}

/**
 * The path of a Chromium that can be run. The answer is kept in CHROMIUM_PATH, so that the processes started from here do
 * not search again. Throws with one line that says what to install when there is none.
 */
export function findBrowser(): string {
  const given = process.env.CHROMIUM_PATH;
  if (given && !isExecutable(given)) throw new Error(`CHROMIUM_PATH is ${given}, which cannot be run: point it at a Chromium or Chrome.`);
  const path = given || installed() || playwrightsOwn() || fromDebian();
  if (!path) throw new Error('No Chromium found: install Chromium or Chrome, or set CHROMIUM_PATH to one.');
  process.env.CHROMIUM_PATH = path;
  return path;
}
