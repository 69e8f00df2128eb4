import { type Clave, type ClaveKind, type DrumStroke, type PianoStroke, TICKS_PER_STEP } from '../vocabulary';
import type { SoundingBar } from './chart/chart';
import { type Alignment, alignment } from './clave/alignment';
import { claveSteps } from './clave/patterns';
import { sideSteps, stepFromThreeSide } from './harmony/bar-steps';

/** The clave over sounding bars: it never resets by itself, and is silent only where the whole band stops. */
export function claveStrokes(bars: readonly SoundingBar[], kind: ClaveKind): DrumStroke[] {
  const strokes = new Set(claveSteps({ kind, direction: '3-2' }));
  const sounding: DrumStroke[] = [];
  for (const bar of bars) {
    if (bar.playing === 'nobody') continue;
    for (let step = 0; step * TICKS_PER_STEP < bar.ticks; step++) {
      if (strokes.has(stepFromThreeSide(bar, step))) sounding.push({ tick: bar.tick + step * TICKS_PER_STEP, stroke: 'stroke' });
    }
  }
  return sounding;
}

/**
 * What the piano states against the clave: the rhythm of its commonest complete clave cycle of groove bars, or of a crossed cycle
 * if there is one. `crossedAt` is the bar (index in the form) where the first crossed cycle begins, or null.
 */
export function alignmentOf(
  bars: readonly SoundingBar[],
  piano: readonly PianoStroke[],
  clave: Clave,
): { readonly alignment: Alignment; readonly crossedAt: number | null } {
  const onsets = new Set(piano.filter((stroke) => !stroke.firstPassOnly).map((stroke) => stroke.tick));
  const counted = new Map<string, { readonly alignment: Alignment; readonly bar: number; times: number }>();
  bars.forEach((first, index) => {
    const second = bars[index + 1];
    if (!second || first.cycleStep !== 0 || second.cycleStep !== sideSteps(first) || first.kind !== 'groove' || second.kind !== 'groove')
      return;
    const steps = sideSteps(first) * 2;
    const grid = Array.from({ length: steps }, (_, step) => onsets.has(first.tick + step * TICKS_PER_STEP));
    const direction = first.side === 2 ? '2-3' : '3-2';
    const key = `${direction} ${grid.map((sounds) => (sounds ? 'x' : '.')).join('')}`;
    const known = counted.get(key);
    if (known) known.times += 1;
    else counted.set(key, { alignment: alignment(grid, { kind: clave.kind, direction }), bar: first.index, times: 1 });
  });
  const found = [...counted.values()];
  const crossed = found.find((cycle) => cycle.alignment.verdict === 'crossed');
  const commonest = found.reduce<(typeof found)[number] | undefined>(
    (best, cycle) => (best && best.times >= cycle.times ? best : cycle),
    undefined,
  );
  const silent = Array.from({ length: clave.kind === 'bembe' ? 12 : 16 }, () => false);
  return { alignment: (crossed ?? commonest)?.alignment ?? alignment(silent, clave), crossedAt: crossed?.bar ?? null };
}
