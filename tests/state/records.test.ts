import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chartFrom, decode, encode, mergeShelves, RECORD_VERSION, shelfFrom } from '../../src/state/records';
import { DEFAULT_PREFERENCES, DEFAULT_SETTINGS, plainMix } from '../../src/state/settings';
import { preferencesFrom, settingsFrom } from '../../src/state/settings-record';

describe('Saved records', () => {
  it('come back as they were written', () => {
    const settings = { ...DEFAULT_SETTINGS, direction: '3-2' as const, loop: { fromBar: 2, toBar: 6 }, devices: ['octaves-only' as const] };
    const read = decode('settings', encode('settings', settings));
    expect(read.kind === 'good' && settingsFrom(read.body, DEFAULT_SETTINGS)).toEqual(settings);
  });

  it('of version 1 are read for as long as the program lives', () => {
    // Typed by hand, as version 1 wrote it: this line is never changed.
    const written = '{"record":"chart","version":1,"body":{"text":"title: Old\\n","good":null}}';
    const read = decode('chart', written);
    expect(read.kind === 'good' && chartFrom(read.body)).toEqual({ text: 'title: Old\n', good: null });
  });

  it('of a later version, and what is no record, are told apart', () => {
    expect(decode('chart', JSON.stringify({ record: 'chart', version: RECORD_VERSION + 1, body: {} })).kind).toBe('newer');
    for (const text of ['', '{', 'null', '[]', '{"record":"shelf","version":1}', '{"record":"chart"}'])
      expect(decode('chart', text).kind).toBe('corrupt');
  });

  it('never throw, whatever is found', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const read = decode('settings', text);
        if (read.kind === 'good') settingsFrom(read.body, DEFAULT_SETTINGS);
      }),
    );
  });

  it('lose a bad field and keep the others', () => {
    const saved = {
      tempo: 9999,
      goalTempo: 100,
      level: 7,
      hands: 'wide',
      devices: ['octave-up', 'rubber'],
      loop: { fromBar: 4, toBar: 2 },
      balance: { bass: { level: 3, muted: true } },
    };
    const read = settingsFrom(saved, DEFAULT_SETTINGS);
    expect(read).toMatchObject({
      tempo: DEFAULT_SETTINGS.tempo,
      goalTempo: 100,
      level: 2,
      hands: 'wide',
      devices: ['octave-up'],
      loop: null,
    });
    expect(read.balance.bass).toEqual({ level: DEFAULT_SETTINGS.balance.bass.level, muted: true });
    expect(read.balance.clave).toEqual(DEFAULT_SETTINGS.balance.clave);
  });

  it('give the defaults for anything that is no object', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.integer(), fc.array(fc.anything()), fc.constant(null)), (saved) => {
        expect(settingsFrom(saved, DEFAULT_SETTINGS)).toEqual(DEFAULT_SETTINGS);
        expect(preferencesFrom(saved, DEFAULT_PREFERENCES)).toEqual(DEFAULT_PREFERENCES);
      }),
    );
  });

  it('of two shelves give the newer of each entry, newest first, and lose none', () => {
    const a = [
      { id: 'x', title: 'Old', changed: 1 },
      { id: 'y', title: 'Y', changed: 5 },
    ];
    const b = [
      { id: 'x', title: 'New', changed: 9 },
      { id: 'z', title: 'Z', changed: 2 },
    ];
    expect(mergeShelves(a, b).map(({ title }) => title)).toEqual(['New', 'Y', 'Z']);
    expect(shelfFrom({ entries: [{ id: 'x', title: 3, changed: 1 }, { id: 'y', title: 'Y', changed: 5 }, null] })).toEqual([
      { id: 'y', title: 'Y', changed: 5 },
    ]);
  });

  it('keep a chart whose moment is no number that JSON can hold: written once more, it would be gone', () => {
    const once = shelfFrom(JSON.parse('{"entries":[{"id":"y","title":"Y","changed":1e999}]}'));
    expect(shelfFrom(JSON.parse(JSON.stringify({ entries: once })))).toEqual([{ id: 'y', title: 'Y', changed: 0 }]);
  });
});

describe('The four plain mixes', () => {
  it('mute what their names leave out and keep levels and the pulse as they were', () => {
    const balance = { ...DEFAULT_SETTINGS.balance, pulse: { level: 0.2, muted: false }, bass: { level: 0.11, muted: true } };
    const heard = (mix: Parameters<typeof plainMix>[1]) =>
      Object.entries(plainMix(balance, mix)).flatMap(([part, { muted }]) => (muted ? [] : [part]));
    expect(heard('everything')).toEqual(['piano right', 'piano left', 'bass', 'clave', 'pulse', 'percussion']);
    expect(heard('clave and piano')).toEqual(['piano right', 'piano left', 'clave', 'pulse']);
    expect(heard('without piano')).toEqual(['bass', 'clave', 'pulse', 'percussion']);
    expect(heard('clave only')).toEqual(['clave', 'pulse']);
    expect(plainMix(balance, 'everything').bass.level).toBe(0.11);
  });
});
