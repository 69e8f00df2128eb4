import { parseMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import { drumKey } from '../../../src/exchange/midi/drum-keys';
import { writeMidi } from '../../../src/exchange/midi/write-midi';
import { STROKES_BY_INSTRUMENT } from '../../../src/music/percussion/percussion';
import { blowsOf } from '../../../src/performance/percussion-touch';
import { LOOP_SCORE } from '../../layout/loop-score';

/**
 * General MIDI System Level 1 percussion key map (RP-003), typed apart from the application's table: 37 Side Stick (from memory), 56 Cowbell,
 * 60 Hi Bongo, 61 Low Bongo, 62 Mute Hi Conga, 63 Open Hi Conga, 64 Low Conga, 65 High Timbale, 66 Low Timbale (both from memory),
 * 70 Maracas, 73 Short Guiro, 74 Long Guiro (from memory).
 */
const KEYS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  cascara: { accent: 37, plain: 37 },
  'mambo bell': { accent: 56, plain: 56 },
  'cha-cha bell': { plain: 56 },
  bell: { plain: 56, accent: 56 },
  timbales: { muffled: 66, open: 66, rimshot: 65, roll: 65, accent: 65 },
  'bongo bell': { mouth: 56, neck: 56 },
  bongo: { accent: 60, thumb: 60, fingers: 60, low: 61 },
  conga: { heel: 62, toe: 62, slap: 62, 'soft slap': 62, open: 63, 'soft open': 63, accent: 63, 'open low': 64 },
  guiro: { 'long scrape': 74, 'short scrape': 73 },
  maracas: { plain: 70, accent: 70 },
};

describe('percussion in a MIDI file', () => {
  it('has a key of the General MIDI map for every instrument and kind of stroke', () => {
    const found = Object.fromEntries(
      [...STROKES_BY_INSTRUMENT].map(([part, strokes]) => [
        part,
        Object.fromEntries(strokes.map((stroke) => [stroke, drumKey(part, stroke)])),
      ]),
    );
    expect(found).toEqual(KEYS);
  });

  it('goes on channel 10, a track for each instrument, as loud as it is heard, rolls blow by blow', () => {
    const percussion = {
      conga: [
        { tick: 0, stroke: 'heel' },
        { tick: 720, stroke: 'open low' },
      ],
      timbales: [
        { tick: 1440, stroke: 'roll' },
        { tick: 1920, stroke: 'accent' },
      ],
    };
    const file = parseMidi(writeMidi({ ...LOOP_SCORE, parts: { ...LOOP_SCORE.parts, percussion } }));
    const notes = file.tracks.slice(-2).map((track) => {
      let tick = 0;
      return track.flatMap((event) => {
        tick += event.deltaTime;
        return event.type === 'noteOn' ? [{ tick, channel: event.channel, key: event.noteNumber, velocity: event.velocity }] : [];
      });
    });
    const strike = (tick: number, key: number, stroke: string) =>
      blowsOf(stroke).map(({ after, velocity }) => ({ tick: tick + after, channel: 9, key, velocity }));
    expect(notes[0]).toEqual([...strike(0, 62, 'heel'), ...strike(720, 64, 'open low')]);
    expect(notes[1]).toEqual([...strike(1440, 65, 'roll'), ...strike(1920, 65, 'accent')]);
    expect(notes[1]).toHaveLength(9);
  });
});
