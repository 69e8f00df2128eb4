/** Finds the browsers of other engines, and a silent sound device for them where the machine has none. */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** The first of these programs that is there, as a path, or null. */
function firstOf(candidates: readonly string[]): string | null {
  for (const candidate of candidates) {
    if (candidate.includes('/')) {
      if (existsSync(candidate)) return candidate;
      continue;
    }
    try {
      return execFileSync('which', [candidate], { encoding: 'utf8' }).trim();
    } catch {
      // Not this one.
    }
  }
  return null;
}

/** What to do where an engine is missing. */
export const NO_FIREFOX = 'No Firefox: install firefox-esr, or set FIREFOX_PATH.';
export const NO_WEBKIT = 'No WebKitGTK: install webkit2gtk-driver and xvfb.';

/** A Firefox that Playwright drives by WebDriver BiDi: FIREFOX_PATH, or what is installed. */
export const findFirefox = (): string | null =>
  process.env.FIREFOX_PATH ?? firstOf(['firefox-esr', 'firefox', '/Applications/Firefox.app/Contents/MacOS/firefox']);

/** WebKitGTK's driver, its small browser and a display, or null where one of them is missing. */
export function findWebKit(): { readonly driver: string; readonly browser: string; readonly display: string } | null {
  const driver = firstOf(['WebKitWebDriver']);
  const display = firstOf(['Xvfb']);
  const libraries = ['/usr/lib/x86_64-linux-gnu', '/usr/lib/aarch64-linux-gnu', '/usr/libexec', '/usr/lib64'];
  const browser = firstOf(
    libraries.flatMap((folder) => ['4.1', '6.0', '4.0'].map((version) => `${folder}/webkit2gtk-${version}/MiniBrowser`)),
  );
  return driver && browser && display ? { driver, browser, display } : null;
}

/**
 * Starts a sound server with a sink that throws everything away, unless one runs: without a device Firefox keeps a live audio context
 * suspended. Says in one line what to install where there is no such server.
 */
export function giveSoundDevice(): void {
  const server = firstOf(['pulseaudio']);
  if (server === null) {
    console.log('No pulseaudio: without a sound device Firefox does not play. Install pulseaudio and pulseaudio-utils.');
    return;
  }
  try {
    execFileSync('pactl', ['info'], { stdio: 'ignore' });
  } catch {
    const modules = ['-L', 'module-null-sink sink_name=nobody', '-L', 'module-native-protocol-unix'];
    execFileSync(server, ['-n', '-D', '--exit-idle-time=60', ...modules], { stdio: 'ignore' });
  }
}
