import { describe, expect, it } from 'vitest';
import { STROKES_BY_INSTRUMENT } from '../../src/music/percussion/percussion';
import { blowsOf, percussionEvents, STROKE_VELOCITIES, strokeVelocity } from '../../src/performance/percussion-touch';
import { perform } from '../../src/performance/perform';
import { LOOP_SCORE } from '../layout/loop-score';

const KINDS = [...new Set([...STROKES_BY_INSTRUMENT.values()].flat())];

describe('the touch of percussion', () => {
  it('has a loudness for every kind of stroke that a pattern can bring, and no kind that none brings', () => {
    for (const kind of KINDS) if (kind !== 'roll') expect(STROKE_VELOCITIES[kind], kind).toBeGreaterThan(0);
    // `stroke` is the clave's.
    expect(Object.keys(STROKE_VELOCITIES).filter((kind) => kind !== 'stroke' && !KINDS.includes(kind))).toEqual([]);
    for (const velocity of Object.values(STROKE_VELOCITIES)) expect(velocity).toBeLessThanOrEqual(127);
  });

  it('puts accents over plain strokes, tones over the hand between them, and soft strokes under both', () => {
    for (const [loud, soft] of [
      ['accent', 'plain'],
      ['open', 'heel'],
      ['slap', 'toe'],
      ['mouth', 'neck'],
      ['open', 'soft open'],
      ['slap', 'soft slap'],
      ['low', 'thumb'],
      ['long scrape', 'short scrape'],
    ] as const)
      expect(strokeVelocity(loud), `${loud} over ${soft}`).toBeGreaterThan(strokeVelocity(soft) + 10);
  });

  it('makes a roll of eight growing blows that end before the next beat', () => {
    const blows = blowsOf('roll');
    expect(blows.map(({ after }) => after)).toEqual([0, 60, 120, 180, 240, 300, 360, 420]);
    expect(blows.every(({ velocity }, index) => velocity > (blows[index - 1]?.velocity ?? 0))).toBe(true);
    expect(blowsOf('accent')).toEqual([{ after: 0, velocity: strokeVelocity('accent') }]);
  });

  it('names sounds by instrument and stroke, and never sounds past the end', () => {
    const events = percussionEvents('timbales', [{ tick: 1440, stroke: 'roll' }], 240, 1700);
    expect(events.map(({ tick }) => tick)).toEqual([1440, 1500, 1560, 1620, 1680]);
    expect(events[0]).toMatchObject({ part: 'percussion', drum: 'timbales roll', midi: null, soundingTicks: 240, firstPassOnly: false });
  });

  it('ends with the drums of the last two bars, not with those of an earlier section', () => {
    const percussion = {
      cascara: [{ tick: 0, stroke: 'accent' }],
      conga: [
        { tick: 0, stroke: 'accent' },
        { tick: LOOP_SCORE.toTick - 240, stroke: 'open' },
      ],
    };
    const score = { ...LOOP_SCORE, parts: { ...LOOP_SCORE.parts, percussion } };
    const { events } = perform(score, { sounding: { right: true, left: true }, pulse: 'halves', ending: true });
    const last = events.filter(({ tick, part }) => tick === LOOP_SCORE.toTick && part === 'percussion');
    expect(last.map(({ drum }) => drum)).toEqual(['conga open']);
  });
});
