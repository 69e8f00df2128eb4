import { describe, expect, it } from 'vitest';
import { createComputerKeys } from '../../src/input/computer-keys';
import { isRhythmKey, noteOfKey } from '../../src/input/key-layout';
import type { Played } from '../../src/state/listening/ports';

class Key extends Event {
  readonly ctrlKey = false;
  readonly metaKey = false;
  readonly altKey = false;
  constructor(
    type: 'keydown' | 'keyup',
    readonly code: string,
    readonly repeat = false,
  ) {
    super(type, { cancelable: true });
  }
}

function keys() {
  const target = new EventTarget();
  let away: () => void = () => undefined;
  const source = createComputerKeys({
    target,
    now: () => performance.now(),
    onAway: (listener) => {
      away = listener;
      return () => undefined;
    },
  });
  const played: Played[] = [];
  source.onPlayed((each) => played.push(each));
  const press = (code: string, repeat = false) => {
    const key = new Key('keydown', code, repeat);
    target.dispatchEvent(key);
    return key.defaultPrevented;
  };
  const lift = (code: string) => target.dispatchEvent(new Key('keyup', code));
  return { source, played, press, lift, leave: () => away() };
}

describe('the layout of notes', () => {
  it('has two rows of naturals, from C3 and from C4, with the sharps between them', () => {
    expect(['KeyZ', 'KeyX', 'KeyC', 'KeyV', 'KeyB', 'KeyN', 'KeyM', 'Comma'].map(noteOfKey)).toEqual([48, 50, 52, 53, 55, 57, 59, 60]);
    expect(['KeyQ', 'KeyW', 'KeyE', 'KeyR', 'KeyT', 'KeyY', 'KeyU', 'KeyI'].map(noteOfKey)).toEqual([60, 62, 64, 65, 67, 69, 71, 72]);
    expect(['KeyS', 'KeyD', 'KeyG', 'KeyH', 'KeyJ'].map(noteOfKey)).toEqual([49, 51, 54, 56, 58]);
    expect(['Digit2', 'Digit3', 'Digit5', 'Digit6', 'Digit7'].map(noteOfKey)).toEqual([61, 63, 66, 68, 70]);
  });

  it('leaves the keys of the page alone', () => {
    for (const code of ['Space', 'Enter', 'Tab', 'Escape', 'ArrowLeft', 'PageDown', 'F5', 'ShiftLeft']) {
      expect(noteOfKey(code), code).toBeNull();
      expect(isRhythmKey(code), code).toBe(false);
    }
  });
});

describe('computer keys', () => {
  it('play nothing until they are opened, and keep what they play from the shortcuts', async () => {
    const { source, played, press } = keys();
    expect(press('KeyQ')).toBe(false);
    await source.open();
    expect(press('KeyQ')).toBe(true);
    expect(press('Space')).toBe(false);
    expect(played).toMatchObject([{ kind: 'note on', midi: 60, coarse: false }]);
  });

  it('sound once while held, and end when lifted, when left, and when closed', async () => {
    const { source, played, press, lift, leave } = keys();
    await source.open();
    press('KeyQ');
    press('KeyQ', true);
    lift('KeyQ');
    press('KeyW');
    leave();
    press('KeyE');
    source.close();
    expect(played.map((each) => `${each.kind} ${'midi' in each ? each.midi : ''}`)).toEqual([
      'note on 60',
      'note off 60',
      'note on 62',
      'note off 62',
      'note on 64',
      'note off 64',
    ]);
    press('KeyQ');
    expect(played).toHaveLength(6);
  });

  it('tap a rhythm on any letter in rhythm mode', async () => {
    const { source, played, press } = keys();
    source.setMode('rhythm');
    await source.open();
    for (const code of ['KeyA', 'KeyF', 'Slash', 'Digit8']) expect(press(code)).toBe(true);
    expect(played.map(({ kind }) => kind)).toEqual(['onset', 'onset', 'onset', 'onset']);
  });

  it('move by octaves, and let held notes go first', async () => {
    const { source, played, press } = keys();
    await source.open();
    press('KeyQ');
    source.setOctave(1);
    press('KeyW');
    expect(played).toMatchObject([
      { kind: 'note on', midi: 60 },
      { kind: 'note off', midi: 60 },
      { kind: 'note on', midi: 74 },
    ]);
  });
});
