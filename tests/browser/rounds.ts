/** Rounds of playing for browser tests: what the page asks for, worked out again from its sources, and takes made from it. */
import type { Page } from '@playwright/test';
import { DEMO_BOOK } from '../../src/music/chart/demo-book';
import { readChart } from '../../src/music/chart/read';
import { arrange } from '../../src/music/score';
import { perform } from '../../src/performance/perform';
import type { Performance, PerformedEvent } from '../../src/performance/performance';
import { createPipeline } from '../../src/state/pipeline';
import { settingsForChart } from '../../src/state/reduce';
import { DEFAULT_SETTINGS } from '../../src/state/settings';
import { assert } from '../../src/vocabulary';
import type { ScriptedNote } from './fake-keyboard';

/** What the piano plays in a loop of the chart that lies open when the page opens for the first time. */
export interface Asked {
  readonly events: readonly PerformedEvent[];
  readonly toTick: number;
}

/** The piano's notes of the first two bars, looped, as the page arranges them without any setting changed. */
export function askedFor(): Asked & { readonly performance: Performance } {
  const demo = DEMO_BOOK[0];
  assert(demo, 'the demo book has a chart');
  const pipeline = createPipeline({ readChart, arrange, perform });
  const reading = pipeline.read(demo.text);
  assert(reading.ok, 'the demo chart has no faults');
  const settings = { ...settingsForChart(reading.value, DEFAULT_SETTINGS), loop: { fromBar: 0, toBar: 2 } };
  const { performance } = pipeline.make(reading.value, settings);
  return { events: performance.events.filter(({ part }) => part.startsWith('piano')), toTick: performance.toTick, performance };
}

/** Milliseconds of the page's clock at tick 0 of some pass of the loop that is heard, by what the page itself says is heard. */
export async function heardFrom(page: Page, msPerTick: number): Promise<number> {
  const zeros = await page.evaluate(
    async ({ perTick, loop }) => {
      const { desk } = document.getElementById('page') as unknown as { desk: { heard(): { tick: number; countIn: number | null } | null } };
      const found: number[] = [];
      const until = performance.now() + 20_000;
      while (found.length < 20) {
        await new Promise((resolve) => setTimeout(resolve, 10));
        const heard = desk.heard();
        if (heard && heard.countIn === null) found.push(performance.now() - heard.tick * perTick);
        if (performance.now() > until) throw new Error('nothing is heard');
      }
      const [first = 0] = found;
      return found.map((zero) => zero - Math.round((zero - first) / loop) * loop);
    },
    { perTick: msPerTick, loop: 3840 * msPerTick },
  );
  return zeros.sort((a, b) => a - b)[zeros.length >> 1] ?? 0;
}

/** How far the music moved against the page's clock between two such moments, in milliseconds: on a machine with too much to do the sound stands still now and then. */
export function slipped(from: number, to: number, msPerTick: number): number {
  const loop = 3840 * msPerTick;
  const off = (((to - from) % loop) + loop) % loop;
  return Math.min(off, loop - off);
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
