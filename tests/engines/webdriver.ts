/** As much of WebDriver (W3C Recommendation, 2018) as a smoke test needs: a session, an address, scripts, clicks, a picture. */
import { type ChildProcess, spawn } from 'node:child_process';
import { freePort } from '../scripts/free-port';
import type { findWebKit } from './find-engines';

/** One browser under a driver. */
export interface Session {
  open(address: string): Promise<void>;
  /** Runs a function body in the page and gives back what it returns; promises are waited for. */
  run<Value>(body: string): Promise<Value>;
  /** Clicks the first element that an XPath finds, as a person would. */
  click(xpath: string): Promise<void>;
  picture(): Promise<Buffer>;
  close(): Promise<void>;
}

const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';

/** Starts display, driver and browser. */
export async function startWebKit({ driver, browser, display }: NonNullable<ReturnType<typeof findWebKit>>): Promise<Session> {
  const screen = `:${90 + (process.pid % 400)}`;
  const port = await freePort();
  const children: ChildProcess[] = [spawn(display, [screen, '-screen', '0', '1400x1000x24'], { stdio: 'ignore' })];
  await pause(1000);
  // The browser's own sandbox cannot be set up by root or in a container.
  const environment = { ...process.env, DISPLAY: screen, GDK_BACKEND: 'x11', WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1' };
  children.push(spawn(driver, [`--port=${port}`], { stdio: 'ignore', env: environment }));
  await pause(1000);
  const ask = async (method: string, path: string, body?: unknown): Promise<unknown> => {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, {
      method,
      ...(body === undefined ? {} : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }),
    });
    const { value } = (await answer.json()) as { value: unknown };
    if (!answer.ok) throw new Error(`WebDriver ${path}: ${JSON.stringify(value).slice(0, 400)}`);
    return value;
  };
  const options = { 'webkitgtk:browserOptions': { binary: browser, args: ['--automation'] } };
  const { sessionId } = (await ask('POST', '/session', { capabilities: { alwaysMatch: options } })) as { sessionId: string };
  const at = `/session/${sessionId}`;
  await ask('POST', `${at}/timeouts`, { script: 60_000, pageLoad: 30_000 });
  await ask('POST', `${at}/window/rect`, { width: 1280, height: 900 });
  return {
    open: async (url) => void (await ask('POST', `${at}/url`, { url })),
    run: async <Value>(body: string) =>
      (await ask('POST', `${at}/execute/async`, {
        script: `const done = arguments[arguments.length - 1];
          (async () => { ${body} })().then((value) => done({ value }), (error) => done({ error: String(error) }));`,
        args: [],
      }).then((answer) => {
        const { value, error } = answer as { value?: Value; error?: string };
        if (error !== undefined) throw new Error(error);
        return value;
      })) as Value,
    click: async (value) => {
      const found = (await ask('POST', `${at}/element`, { using: 'xpath', value })) as Record<string, string>;
      await ask('POST', `${at}/element/${found[ELEMENT]}/click`, {});
    },
    picture: async () => Buffer.from(String(await ask('GET', `${at}/screenshot`)), 'base64'),
    close: async () => {
      await ask('DELETE', at).catch(() => undefined);
      for (const child of children.reverse()) child.kill();
    },
  };
}

const pause = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds));
