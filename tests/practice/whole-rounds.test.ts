import { describe, expect, test } from 'vitest';
import { assess } from '../../src/practice/assess';
import type { FindingFacts, LoopBars } from '../../src/practice/finding';
import type { ExpectedStroke } from '../../src/practice/labelled';
import { matchTake } from '../../src/practice/match';
import type { Take, TakenNote } from '../../src/practice/take';
import { songSeconds } from '../../src/vocabulary';
import { FINDINGS } from '../../src/words/findings';
import { HALLAZGOS } from '../../src/words/spanish/findings';
import { emptyTake, type Playing, played } from './synthetic';

/*
 * Whole rounds: a take as a certain player would play it → match → assessment → the sentences. What a teacher would say of each was
 * written down first (common practice, no source; the mistakes are the usual ones of this figure), and then asked of the program. Each
 * player has an ordinary human spread of 8 % of a step, and chords 15 ms wide.
 */

/** A tune with three sections, and a vamp of four bars: the Quay Street Dance Band's, invented. */
const TUNE =
  'title: Rope Walk\nkey: Gm\nclave: 2-3 son\ntempo: half = 88\nstyle: salsa\n\n[A]\n| Gm6 | Eb7 | Gm6 | D7 |\n| Gm6 | Cm7 | D7 | Gm6 |\n\n[B]\n| Bbmaj7 | Ebmaj7 | F7 | Bb6 |\n| Cm7 | Gm6 | D7 | Gm6 |\n\n[C]\n| Gm6 | Cm7 | D7 | Gm6 |\n| Ebmaj7 | Cm7 | D7 | Gm6 |\n';
const VAMP = 'title: Ferry Bell\nkey: C\nclave: 3-2 son\ntempo: half = 84\nstyle: salsa\n\n[A]\n| C6 | F6 | G7 | F6 |\n';

const tune = (passes = 1): Take => ({ ...emptyTake(TUNE, { passes, tempo: 88 }), timing: 'uncalibrated' });
const vamp = (): Take => ({ ...emptyTake(VAMP, { passes: 4, tempo: 84 }), timing: 'uncalibrated' });

function round(empty: Take, playing: Partial<Playing>) {
  const { take } = played(empty, { seed: 5, spread: 0.08, chordMs: 15, ...playing });
  const found = assess(take, matchTake(take));
  for (const { facts } of found.all)
    for (const sentence of [FINDINGS.sentence(facts), HALLAZGOS.sentence(facts)]) {
      expect(sentence).toMatch(/^\p{Lu}|^\d/u);
      expect(sentence).toMatch(/\.$/);
      expect(sentence).not.toMatch(/\b(undefined|NaN|null|sloppy|bad|poor|fail|mal|error)\b/i);
    }
  const said = found.findings.map(({ facts }) => facts);
  return { found, said, kinds: said.map(({ kind }) => kind), first: found.findings[0] };
}
const holds = (loop: LoopBars | undefined, bar: number): boolean => loop !== undefined && loop.fromBar <= bar && bar < loop.toBar;
const of = <Kind extends FindingFacts['kind']>(said: readonly FindingFacts[], kind: Kind) =>
  said.find((facts) => facts.kind === kind) as Extract<FindingFacts, { kind: Kind }> | undefined;

/** Where the figure takes the next chord early, the hand stays on what it held; in every bar, or in every second one. */
function oldChord({ score }: Take, every = 1) {
  const strokes = score?.parts.rightHand ?? [];
  return (stroke: ExpectedStroke, notes: readonly TakenNote[]) => {
    const own = strokes.find(({ tick }) => tick === stroke.tick);
    if (!own || own.leadTicks === 0 || Math.floor(stroke.playTick / 1920) % every !== 0) return notes;
    const held = strokes.findLast(({ tick, leadTicks }) => tick < stroke.tick && leadTicks === 0)?.midi ?? own.midi;
    return notes.map((note, index) => ({ ...note, midi: held[index % held.length] ?? note.midi }));
  };
}
const leftLater = (ms: number) => (stroke: ExpectedStroke, notes: readonly TakenNote[]) =>
  notes.map((note) =>
    stroke.notes.some(({ part, midi }) => part === 'piano left' && midi === note.midi)
      ? { ...note, at: songSeconds(note.at + ms / 1000) }
      : note,
  );
const offbeat = ({ step }: ExpectedStroke): boolean => step % 2 === 1;
/** Milliseconds gained since `fromBar` at so many a cycle, in bars [fromBar, toBar) alone. */
const within = (fromBar: number, toBar: number, msPerCycle: number) => (stroke: ExpectedStroke) =>
  stroke.bar >= fromBar && stroke.bar < toBar ? ((((stroke.playTick / 1920) % 24) - fromBar) / 2) * msPerCycle : 0;

describe('a good player', () => {
  test('is told nothing, also over a line that delays everything by up to 110 ms and was not measured', () => {
    for (const empty of [tune(), vamp()])
      for (const offsetMs of [0, 60, -60, 110]) {
        const { found } = round(empty, { offsetMs });
        expect(found).toMatchObject({ clean: true, shareRight: 1, timing: 'in time', all: [] });
      }
  });

  test('with a delay of most of an eighth is told of the delay first, not only that they are late', () => {
    const { said, found } = round(tune(), { offsetMs: 150 });
    expect(found.all).toHaveLength(1);
    expect(said[0]).toEqual({ kind: 'displaced', steps: 1, fromStart: true, bar: 0 });
    expect(FINDINGS.sentence(said[0] as FindingFacts)).toMatch(/speaker or instrument is slow: measure its delay/);
  });
});

describe('the old chord on the & of 4', () => {
  test('at every change: that one thing, at every change, and no other notes beside it', () => {
    for (const [empty, changes] of [
      [tune(), 22],
      [vamp(), 16],
    ] as const) {
      const { said, first } = round(empty, { notes: oldChord(empty) });
      expect(said).toMatchObject([{ kind: 'late chords', count: changes, of: changes, step: 7 }]);
      expect(first?.loop).toEqual({ fromBar: 0, toBar: 2 });
    }
  });

  test('at half of the changes, and with notes let go early besides: the chord first, then the length', () => {
    const half = round(tune(), { notes: oldChord(tune(), 2) });
    expect(half.kinds).toEqual(['late chords']);
    const empty = tune();
    const both = round(empty, {
      notes: (stroke, notes) => oldChord(empty)(stroke, notes).map((note) => ({ ...note, until: songSeconds(note.at + 0.09) })),
    });
    expect(both.kinds).toEqual(['late chords', 'cut short']);
  });

  test('a foreign note there is a wrong note, not a late chord', () => {
    const empty = tune();
    // B natural belongs to no chord of this tune.
    const foreign = (midi: number | null): number => Math.floor((midi ?? 60) / 12) * 12 + 11;
    const notes: Playing['notes'] = (stroke, struck) => {
      const own = empty.score?.parts.rightHand.find(({ tick }) => tick === stroke.tick);
      return own && own.leadTicks > 0 ? struck.map((note) => ({ ...note, midi: foreign(note.midi) })) : struck;
    };
    expect(round(empty, { notes }).kinds[0]).toBe('wrong notes');
  });
});

describe('time', () => {
  test('swung eighths: said once, with the share, and not as lying behind the band too', () => {
    const { said } = round({ ...tune(), timing: 'calibrated' }, { push: (stroke) => (offbeat(stroke) ? stroke.stepMs / 3 : 0) });
    expect(said.map(({ kind }) => kind)).toEqual(['swung']);
    expect(of(said, 'swung')?.shareOfStep).toBeCloseTo(1 / 3, 1);
  });

  test('dragging all through: said once, also on a calibrated device', () => {
    const { said } = round({ ...tune(), timing: 'calibrated' }, { push: ({ playTick }) => (playTick / 3840) * 12 });
    expect(said).toMatchObject([{ kind: 'dragging', bars: null }]);
  });

  test('dragging in the bridge alone, rushing in the last section alone: which bars, and the loop is those bars', () => {
    for (const passes of [1, 2]) {
      const bridge = round(tune(passes), { push: within(8, 16, 25) });
      expect(bridge.said).toMatchObject([{ kind: 'dragging', bars: { fromBar: 8, toBar: 16 } }]);
      expect(bridge.first?.loop).toEqual({ fromBar: 8, toBar: 16 });
      expect(Math.abs((bridge.said[0] as { msPerCycle: number }).msPerCycle - 25)).toBeLessThan(5);
      const last = round(tune(passes), { push: within(16, 24, -25) });
      expect(last.said).toMatchObject([{ kind: 'rushing', bars: { fromBar: 16, toBar: 24 } }]);
      expect(FINDINGS.sentence(last.said[0] as FindingFacts)).toMatch(/^In bars 17–24 you get ahead of the band/);
      expect(HALLAZGOS.sentence(last.said[0] as FindingFacts)).toMatch(/^En los compases 17–24 te adelantas/);
    }
  });

  test('an even player is never told of a section that drags (40 takes, two tempos, two spreads)', () => {
    for (const tempo of [60, 120])
      for (const spread of [0.08, 0.14])
        for (let seed = 0; seed < 10; seed += 1) {
          const { all } = round(emptyTake(TUNE, { tempo }), { seed, spread }).found;
          expect(all.filter(({ facts }) => facts.kind === 'dragging' || facts.kind === 'rushing')).toEqual([]);
        }
  });
});

describe('touch', () => {
  test('hands apart, by 45 to 80 ms either way: the hands, and nothing about strokes too many, swing or the beat', () => {
    for (const ms of [45, 60, 80, -45, -70])
      for (const empty of [tune(), vamp()]) {
        const { said, found } = round({ ...empty, timing: 'calibrated' }, { notes: leftLater(ms) });
        expect(said.map(({ kind }) => kind)).toEqual(['hands apart']);
        expect(Math.abs((of(said, 'hands apart')?.leftBehindMs ?? 0) - ms)).toBeLessThan(5);
        expect(found.clean).toBe(true);
      }
  });

  test('cut short over the silent 1; everything short says no more than that', () => {
    const short = (ms: number) => (note: TakenNote) => ({ ...note, until: songSeconds(note.at + ms / 1000) });
    const over = round(tune(), { notes: (stroke, notes) => (stroke.step >= 6 ? notes.map(short(100)) : notes) });
    expect(over.said).toMatchObject([{ kind: 'cut short', step: 7 }]);
    expect(holds(over.first?.loop, of(over.said, 'cut short')?.bar ?? -1)).toBe(true);
    expect(round(tune(), { notes: (_, notes) => notes.map(short(90)) }).kinds).toEqual(['cut short']);
  });

  test('inner notes as loud as the octaves; keys without touch are told nothing', () => {
    const loud = round(tune(), {
      notes: ({ playTick }, notes) => notes.map((note) => ({ ...note, velocity: 84 + ((playTick / 240) % 5) })),
    });
    expect(loud.kinds).toEqual(['inner loud']);
    expect(round(tune(), { notes: (_, notes) => notes.map((note) => ({ ...note, velocity: 90 })) }).kinds).toEqual([]);
  });
});

describe('a beginner', () => {
  test('in place: notes, then strokes left out, then strokes too many, each with its own bars', () => {
    const { kinds, found } = round(tune(), { spread: 0.22, missed: 0.15, wrong: 0.12, extra: 0.08 });
    expect(kinds).toEqual(['wrong notes', 'missed', 'extra']);
    expect(found.clean).toBe(false);
    for (const { facts, loop } of found.findings) expect(holds(loop, 'bar' in facts ? facts.bar : 0)).toBe(true);
  });

  test('crossed: that alone, however much else there is', () => {
    const { said } = round(tune(), { spread: 0.18, missed: 0.15, wrong: 0.12, displacedSteps: 8 });
    expect(said).toEqual([{ kind: 'crossed', fromStart: true, bar: 0 }]);
  });

  test('lost in one section alone: its bars, and one thing', () => {
    const { said, first } = round(tune(), {
      notes: ({ bar }, notes) => (bar >= 12 && bar < 16 ? notes.map((note) => ({ ...note, midi: (note.midi ?? 0) + 1 })) : notes),
    });
    expect(said.map(({ kind }) => kind)).toEqual(['wrong notes']);
    expect(first?.loop.fromBar).toBeGreaterThanOrEqual(12);
    expect(first?.loop.toBar).toBeLessThanOrEqual(16);
  });
});
