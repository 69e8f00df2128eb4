import assert from 'node:assert/strict';
import { createMidi } from '../../src/input/midi';
import { habitsFrom } from '../../src/state/habits/habits';
import { setsFrom } from '../../src/state/library/set-list';
import { calibrationsFrom } from '../../src/state/listening/calibrations';
import type { Played } from '../../src/state/listening/ports';
import { chartFrom, decode, encode, lastChartFrom, type RecordKind, shelfFrom } from '../../src/state/records';
import { DEFAULT_PREFERENCES, DEFAULT_SETTINGS } from '../../src/state/settings';
import { preferencesFrom, settingsFrom } from '../../src/state/settings-record';
import { FakeMidi } from '../input/fake-midi';
import { FIRST_RELEASE, VOCABULARY_RELEASE } from '../state/stored-releases';
import { target } from './fuzz-target';
import { mutateJson } from './mutate-json';

const midi = new FakeMidi();
const keyboard = createMidi({ request: async () => midi.asAccess(), now: () => 1000, onAway: () => () => undefined });
const played: Played[] = [];
keyboard.source.onPlayed((one) => played.push(one));
await keyboard.source.open();

/** Messages of a MIDI device, of any bytes and lengths: notes within the keyboard, and each that began ends when the device goes. */
export const MIDI_INPUT = target<readonly (readonly number[])[]>({
  name: 'midi',
  make: (random) =>
    Array.from({ length: 1 + Math.floor(random() * 30) }, () => {
      const length = Math.floor(random() * 5) + (random() < 0.01 ? 70_000 : 0);
      const status = [0x80, 0x90, 0xb0, 0xf0, 0xfe, 0][Math.floor(random() * 6)] ?? 0;
      return Array.from({ length }, (_, at) =>
        at === 0 && random() < 0.8 ? status + Math.floor(random() * 16) : Math.floor(random() * (random() < 0.8 ? 128 : 256)),
      );
    }),
  check(messages) {
    const port = midi.plug('in');
    played.length = 0;
    messages.forEach((bytes, at) => {
      port.play(bytes, 1000 + at);
    });
    midi.unplug('in');
    const held = new Set<number>();
    for (const one of played) {
      assert(one.kind !== 'onset', 'a stroke without a note');
      assert(Number.isFinite(one.at), 'a moment');
      if (one.kind === 'pedal') continue;
      assert(Number.isInteger(one.midi) && one.midi >= 0 && one.midi <= 127, `a note ${one.midi}`);
      if (one.kind === 'note off') held.delete(one.midi);
      else {
        assert(one.velocity >= 1 && one.velocity <= 127);
        held.add(one.midi);
      }
    }
    assert.deepEqual([...held], [], 'a note hangs after its device has gone');
    return played.length > 0;
  },
});

const STORED = [FIRST_RELEASE, VOCABULARY_RELEASE].flatMap((release) => Object.entries(release));
const SETS = encode('sets', { lists: [{ id: 's1', name: 'Saturday', date: '2026-11-28', charts: ['a1'], changed: 6 }] });
const CALIBRATIONS =
  '{"version":1,"calibrations":[{"device":"Speaker","latencyMs":40,"spreadMs":3,"rate":48000,"measured":1764000000000}]}';
const ALL: readonly (readonly [string, string])[] = [...STORED, ['sets', SETS], ['calibrations', CALIBRATIONS]];

/** Saved records of every version there has been: good fields stay, bad ones take their default, and what is read is stable. */
export const STORED_STATE = target<readonly [string, string]>({
  name: 'stored state',
  make(random) {
    const [key, text] = ALL[Math.floor(random() * ALL.length)] ?? ['', ''];
    return [key, mutateJson(JSON.parse(text), random)];
  },
  check([key, text]) {
    if (key === 'habits') return habitsFrom(text) !== null;
    if (key === 'calibrations') return calibrationsFrom(text).length > 0;
    const kind = (key.split('/')[0] ?? '') as RecordKind;
    const decoded = decode(kind, text);
    if (decoded.kind !== 'good') return false;
    const { body } = decoded;
    if (kind === 'settings') same((saved) => settingsFrom(saved, DEFAULT_SETTINGS), body);
    if (kind === 'preferences') same((saved) => preferencesFrom(saved, DEFAULT_PREFERENCES), body);
    if (kind === 'shelf') same((saved) => ({ entries: shelfFrom(saved) }), body);
    if (kind === 'sets') same((saved) => ({ lists: setsFrom(saved) }), body);
    if (kind === 'chart') same((saved) => chartFrom(saved), body);
    lastChartFrom(body);
    return true;
  },
});

/** Reading what was read once more, by way of its text, changes nothing. */
function same(read: (saved: unknown) => unknown, body: unknown): void {
  const once = read(body);
  assert.deepEqual(read(JSON.parse(JSON.stringify(once))), once);
}
