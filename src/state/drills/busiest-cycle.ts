import type { Form } from '../../music/chart/chart';
import { closes } from '../loop';
import type { Loop } from '../settings';

/** The two bars, a whole clave cycle, in which the chords change most often; the first of several, null when the form has none. */
export function busiestCycle(form: Pick<Form, 'bars' | 'meter'>): Loop | null {
  const cycles = form.bars.map((_, bar): Loop => ({ fromBar: bar, toBar: bar + 2 })).filter((loop) => closes(form, loop));
  const changes = ({ fromBar, toBar }: Loop): number =>
    form.bars.slice(fromBar, toBar).reduce((sum, bar) => sum + new Set(bar.chords.map(({ symbol }) => symbol)).size, 0);
  return cycles.reduce<Loop | null>((most, loop) => (most === null || changes(loop) > changes(most) ? loop : most), null);
}
