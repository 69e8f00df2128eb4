import type { Desk } from '../../state/desk';
import { inputMillis, type Level } from '../../vocabulary';
import { askWord } from '../glossary/asked-word';
import { hasOwnSpace } from './own-keys';

/** Panels and views that keys open and close. */
export interface Panels {
  readonly keys: () => void;
  readonly balance: () => void;
  readonly stand: () => void;
}

/** Does what a key stands for; false when it stands for nothing. Page Up and Page Down always work (pedals send them), single keys while they are switched on. */
export function actOnKey(event: KeyboardEvent, desk: Desk, panels: Panels): boolean {
  const { settings, preferences } = desk.desk.getState();
  if (event.key === 'PageDown' || event.key === 'PageUp') {
    // A pedal's forward key is the cue while an open section goes round.
    if (event.key === 'PageDown' && desk.playing.getState().vamp === 'holding') desk.run({ kind: 'cue' });
    else desk.run({ kind: 'turn page', by: event.key === 'PageDown' ? 1 : -1 });
    return true;
  }
  if (!preferences.shortcuts) return false;
  const step = preferences.tempoUnit === 'half' ? 1 : 0.5;
  switch (event.key) {
    case '?':
      panels.keys();
      return true;
    case '-':
      desk.run({ kind: 'step tempo', by: -Math.max(1, step) });
      return true;
    case '+':
    case '=':
      desk.run({ kind: 'step tempo', by: Math.max(1, step) });
      return true;
    case '[':
      desk.run({ kind: 'one bar before' });
      return true;
    case ']':
      desk.run({ kind: 'one bar after' });
      return true;
    case '1':
    case '2':
    case '3':
    case '4':
    case '5':
    case '6':
      desk.run({ kind: 'set', settings: { level: Number(event.key) as Level } });
      return true;
    case '0':
      desk.run({ kind: 'set', settings: { level: 'by section' } });
      return true;
    case 'Enter':
      if (desk.playing.getState().vamp !== 'holding' || hasOwnSpace(event.target)) return false;
      desk.run({ kind: 'cue' });
      return true;
  }
  switch (event.key.toLowerCase()) {
    case 't':
      desk.run({ kind: 'tap', at: inputMillis(event.timeStamp) });
      return true;
    case 's':
      panels.stand();
      return true;
    case 'w':
      askWord('all');
      return true;
    case 'b':
      panels.balance();
      return true;
    case 'v':
      desk.run({ kind: 'set', settings: { view: settings.view === 'grid' ? 'staff' : 'grid' } });
      return true;
    case 'd':
      desk.run({ kind: 'exchange sides' });
      return true;
    case 'c':
      desk.run({ kind: 'cue' });
      return true;
    case 'a':
      desk.run({ kind: 'another one' });
      return true;
    case 'f':
    case 'j': {
      const part = event.key.toLowerCase() === 'f' ? 'piano left' : 'piano right';
      desk.run({ kind: 'mute', part, muted: !settings.balance[part].muted });
      return true;
    }
    case 'l':
      desk.run(settings.loop ? { kind: 'loop off' } : { kind: 'loop cycle', bar: desk.playing.getState().bar });
      return true;
    default:
      return false;
  }
}
