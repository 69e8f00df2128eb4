import type { Mixer } from '../../../../src/audio/mixer';
import { readChart } from '../../../../src/music/chart/read';
import { unfold } from '../../../../src/music/chart/unfold';
import { percussionParts, STROKES_BY_INSTRUMENT } from '../../../../src/music/percussion/percussion';
import { blowsOf, percussionEvents } from '../../../../src/performance/percussion-touch';

/** What percussion can strike, as events are named, with the loudness of its last blow. */
export const STROKES: readonly { readonly drum: string; readonly velocity: number }[] = [...STROKES_BY_INSTRUMENT].flatMap(
  ([instrument, strokes]) =>
    strokes.map((stroke) => ({ drum: `${instrument} ${stroke}`, velocity: blowsOf(stroke).at(-1)?.velocity ?? 0 })),
);

/** Four bars of a salsa kit at a tempo in half notes, from 0.1 s. */
export function kit(tempo: number, role: 'verse' | 'coro') {
  const chart = readChart(`clave: 2-3 son\n[A, role: ${role}]\n| Ebm6 | Ab7 | Ebm6 | Ab7 |`);
  if (!chart.ok) throw new Error(JSON.stringify(chart.faults));
  const form = unfold(chart.value);
  const parts = percussionParts(form.bars, 'son', { styleOf: (bar) => bar.style });
  return (mixer: Mixer): number => {
    const events = Object.entries(parts).flatMap(([name, strokes]) => percussionEvents(name, strokes, 240, form.totalTicks));
    for (const event of events) mixer.start(event, 0.1 + (event.tick / 960) * (60 / tempo), 0.2);
    return events.length;
  };
}
