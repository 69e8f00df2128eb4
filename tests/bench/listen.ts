/**
 * From a key to what is seen and heard (`npm run bench -- --only listen`): notes of an injected MIDI keyboard, each after a silence, on the
 * built page in Chromium. To the first audible frame of our piano, counted on the clock of the sound
 * from what was being computed when the message came (what the sound device adds after that is not in it), to the picture that has the lamp lit, and the time the page's thread spends on the message itself.
 */
import type { Page } from '@playwright/test';
import { injectKeyboard } from '../browser/fake-keyboard';
import { onBuiltPage, RUNNER_HELPER } from './built-page';
import { median, ofBudget, type Results } from './measure';

const NOTES = 24;
/** Amplitude from which a frame counts as audible: 60 dB below full scale. */
const AUDIBLE = 0.001;

/** Runs in the page before its own code; as text, so that no tool rewrites it. Taps whatever is connected to a live context's destination. */
const PROBE = `
  const connect = AudioNode.prototype.connect;
  const probes = new Map();
  AudioNode.prototype.connect = function (...to) {
    if (to[0] instanceof AudioDestinationNode && this.context instanceof AudioContext && !probes.has(this.context)) {
      const probe = this.context.createAnalyser();
      probe.fftSize = 4096;
      probes.set(this.context, probe);
      connect.call(this, probe);
    }
    return connect.apply(this, to);
  };
  // Seconds on the clock of the sound: now, and of the first audible frame since 'from'; null while there is none.
  window.soundNow = () => [...probes.keys()][0]?.currentTime ?? 0;
  window.firstAudible = (from) => {
    for (const [context, probe] of probes) {
      const frames = new Float32Array(probe.fftSize);
      const now = context.currentTime;
      probe.getFloatTimeDomainData(frames);
      const at = (index) => now - (frames.length - index) / context.sampleRate;
      const first = frames.findIndex((value, index) => Math.abs(value) > ${AUDIBLE} && at(index) >= from);
      if (first >= 0) return at(first);
    }
    return null;
  };
  window.isSilent = () => [...probes.values()].every((probe) => {
    const frames = new Float32Array(probe.fftSize);
    probe.getFloatTimeDomainData(frames);
    return frames.every((value) => Math.abs(value) < ${AUDIBLE} / 2);
  });
  // One note: milliseconds until it sounds and until a picture with the lamp lit begins.
  window.oneNote = async (midi) => {
    for (let waited = 0; !window.isSilent() && waited < 400; waited += 1) await new Promise((resolve) => setTimeout(resolve, 10));
    const from = performance.now();
    const soundFrom = window.soundNow();
    const lit = new Promise((resolve) => {
      const watch = new MutationObserver(() => {
        if (!document.querySelector('.lamp[data-lit]')) return;
        watch.disconnect();
        requestAnimationFrame(() => resolve(performance.now() - from));
      });
      watch.observe(document.body, { subtree: true, attributes: true, attributeFilter: ['data-lit'] });
    });
    window.testKeyboard.send([0x90, midi, 100], from);
    let sounded = null;
    while (sounded === null && performance.now() - from < 1000) {
      await new Promise((resolve) => setTimeout(resolve, 2));
      sounded = window.firstAudible(soundFrom);
    }
    const light = await lit;
    window.testKeyboard.send([0x80, midi, 0]);
    await new Promise((resolve) => setTimeout(resolve, 300));
    return [sounded === null ? NaN : 1000 * (sounded - soundFrom), light];
  };
`;

async function openListening(page: Page, address: string): Promise<void> {
  await page.addInitScript(RUNNER_HELPER);
  await injectKeyboard(page);
  await page.addInitScript({ content: PROBE });
  await page.goto(address);
  await page.getByRole('button', { name: 'Play along' }).click();
  const row = page.getByRole('region', { name: 'Play along' });
  await row.getByRole('button', { name: 'MIDI keyboard' }).click();
  await row.getByText('Device', { exact: true }).click();
  await row.getByRole('button', { name: 'Sound what I play' }).click();
  // The recordings have been fetched and decoded, and the first note has woken the sound.
  await page.waitForTimeout(3000);
  await page.evaluate('window.oneNote(60)');
}

/** Medians and worst of `NOTES` notes. */
export const measureListen = (): Promise<Results> =>
  onBuiltPage(async (browser, address) => {
    const page = await browser.newPage();
    await openListening(page, address);
    const notes: (readonly [number, number])[] = [];
    for (let note = 0; note < NOTES; note += 1)
      notes.push((await page.evaluate(`window.oneNote(${48 + ((note * 7) % 36)})`)) as readonly [number, number]);
    const handler = await page.evaluate(() => [...(window.testKeyboard?.handlerMs ?? [])]);
    const sound = notes.map(([ms]) => ms);
    const light = notes.map(([, ms]) => ms);
    return {
      noteToSoundMs: ofBudget(median(sound), 30, 'from about 30 ms on a player hears key and note apart (from memory)'),
      noteToSoundWorstMs: Math.max(...sound),
      noteToLightMs: ofBudget(median(light), 50, 'three pictures of a display that draws sixty a second'),
      noteToLightWorstMs: Math.max(...light),
      noteHandlerMs: ofBudget(median(handler), 0.5, 'our own limit'),
      noteHandlerWorstMs: Math.max(...handler),
    };
  });
