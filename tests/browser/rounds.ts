/** Rounds of playing for browser tests: what the page asks for, worked out again from its sources, and takes made from it. */
import type { Page } from '@playwright/test';
import { DEMO_BOOK } from '../../src/music/chart/demo-book';
import { readChart } from '../../src/music/chart/read';
import { arrange } from '../../src/music/score';
import { perform } from '../../src/performance/perform';
import type { PerformedEvent } from '../../src/performance/performance';
import { createPipeline } from '../../src/state/pipeline';
import { settingsForChart } from '../../src/state/reduce';
import { DEFAULT_SETTINGS } from '../../src/state/settings';
import { assert } from '../../src/vocabulary';
import type { ScriptedNote } from './fake-keyboard';

/** A loop of the chart that lies open when the page opens for the first time. */
export interface Asked {
  readonly events: readonly PerformedEvent[];
  readonly toTick: number;
}

/** The piano's notes of the first two bars, looped, as the page arranges them without any setting changed. */
export function askedFor(): Asked {
  const demo = DEMO_BOOK[0];
  assert(demo, 'the demo book has a chart');
  const pipeline = createPipeline({ readChart, arrange, perform });
  const reading = pipeline.read(demo.text);
  assert(reading.ok, 'the demo chart has no faults');
  const settings = { ...settingsForChart(reading.value, DEFAULT_SETTINGS), loop: { fromBar: 0, toBar: 2 } };
  const { performance } = pipeline.make(reading.value, settings);
  return { events: performance.events.filter(({ part }) => part.startsWith('piano')), toTick: performance.toTick };
}

/** Where the playhead is, as a line: milliseconds of the page's clock at tick 0 of the pass that sounds, and milliseconds to the tick. */
export interface PlayheadLine {
  readonly zero: number;
  readonly msPerTick: number;
}

/** Reads the playhead for about a second and puts a line through it: what is drawn follows what is heard. */
export async function playheadLine(page: Page, msPerTick: number): Promise<PlayheadLine> {
  const zeros = await page.evaluate(
    async ({ perTick }) => {
      const found: number[] = [];
      const until = performance.now() + 1500;
      while (performance.now() < until || found.length < 20) {
        await new Promise((resolve) => requestAnimationFrame(resolve));
        const now = performance.now();
        const panel = document.querySelector<HTMLElement>('.now-card .panel[data-now]');
        const share =
          Number(/translateX\(([\d.]+)%/.exec(panel?.querySelector<HTMLElement>('.now-line')?.style.transform ?? '')?.[1] ?? 'NaN') / 100;
        if (panel && Number.isFinite(share)) found.push(now - (Number(panel.dataset.tick) + share * 1920) * perTick);
        if (now > until + 20_000) throw new Error('the playhead does not move');
      }
      return found;
    },
    { perTick: msPerTick },
  );
  // Passes differ by whole loops: all are brought to the first, and the middle one is taken.
  const loop = 3840 * msPerTick;
  const first = zeros[0] ?? 0;
  const folded = zeros.map((zero) => zero - Math.round((zero - first) / loop) * loop).sort((a, b) => a - b);
  return { zero: folded[folded.length >> 1] ?? first, msPerTick };
}

/** A take made of `passes` times the loop: `change` moves, alters or drops each note. */
export function takeOf(
  asked: Asked,
  msPerTick: number,
  passes: number,
  change: (event: PerformedEvent, pass: number, tick: number) => { readonly offMs?: number; readonly midi?: number } | null,
): ScriptedNote[] {
  const notes: ScriptedNote[] = [];
  for (let pass = 0; pass < passes; pass += 1)
    for (const event of asked.events) {
      const tick = event.tick + event.offsetTicks;
      const changed = change(event, pass, tick);
      if (changed === null || event.midi === null || (event.firstPassOnly && pass > 0)) continue;
      notes.push({
        afterMs: (pass * asked.toTick + tick) * msPerTick + (changed.offMs ?? 0),
        midi: changed.midi ?? event.midi,
        velocity: event.velocity,
        lastsMs: event.soundingTicks * msPerTick * 0.9,
      });
    }
  return notes;
}

/** A seeded normal variate (Box and Muller, "A note on the generation of random normal deviates", 1958). */
export function normal(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (state * 1_664_525 + 1_013_904_223) % 4_294_967_296;
    return (state + 1) / 4_294_967_297;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
