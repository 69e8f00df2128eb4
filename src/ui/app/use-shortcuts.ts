import { useEffect } from 'react';
import type { Desk } from '../../state/desk';
import { inputMillis, type Level } from '../../vocabulary';

/**
 * Listens for the page's keys: Space plays or stops, single keys work while they are switched on, Page Up and Page Down always (pedals send them).
 * In text fields no key is taken. A button reached with Tab keeps its own Space; one that was clicked does not, so that Space still stops the music.
 */
export function useShortcuts(desk: Desk, openList: () => void): void {
  useEffect(() => {
    let byPointer = true;
    const onPointer = (): void => {
      byPointer = true;
    };
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.key === 'Tab' || event.key.startsWith('Arrow')) byPointer = false;
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || isTextField(event.target)) return;
      if (event.key === ' ') {
        if (!byPointer && hasOwnSpace(event.target)) return;
        event.preventDefault();
        if (!event.repeat) desk.run({ kind: 'play or stop' });
      } else if (act(event, desk, openList)) event.preventDefault();
    };
    // A clicked button would still be pressed when Space goes up.
    const onKeyUp = (event: KeyboardEvent): void => {
      if (event.key === ' ' && byPointer && !isTextField(event.target)) event.preventDefault();
    };
    window.addEventListener('pointerdown', onPointer, true);
    window.addEventListener('keydown', onKeyDown);
    window.addEventListener('keyup', onKeyUp);
    return () => {
      window.removeEventListener('pointerdown', onPointer, true);
      window.removeEventListener('keydown', onKeyDown);
      window.removeEventListener('keyup', onKeyUp);
    };
  }, [desk, openList]);
}

function act(event: KeyboardEvent, desk: Desk, openList: () => void): boolean {
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
      openList();
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

function isTextField(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement) return !['button', 'checkbox', 'radio', 'range', 'submit'].includes(target.type);
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement || target.isContentEditable;
}

function hasOwnSpace(target: EventTarget | null): boolean {
  return (
    target instanceof Element && target.closest('button, summary, input, a, [role="gridcell"], [role="radio"], [role="slider"]') !== null
  );
}
