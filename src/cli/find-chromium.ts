import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chrome', 'microsoft-edge'];
const PLACES = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** Path of an installed Chromium or Chrome: CHROMIUM_PATH, one on the search path, or one where it usually lies; null when there is none. */
export function findChromium(environment: Readonly<Record<string, string | undefined>>): string | null {
  const folders = (environment.PATH ?? '').split(delimiter).filter(Boolean);
  const given = environment.CHROMIUM_PATH;
  const candidates = given ? [given] : [...NAMES.flatMap((name) => folders.map((folder) => join(folder, name))), ...PLACES];
  return candidates.find(isExecutable) ?? null;
}

/** True when the file may be run. */
export function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
