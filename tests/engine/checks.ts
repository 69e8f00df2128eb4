// long because the checks of one table belong side by side
import { alignment } from '../../src/music/clave/alignment';
import { scaleOf } from '../../src/music/pitch/key';
import { degreeSemitones, pcOf } from '../../src/music/pitch/spell';
import type { Score } from '../../src/music/score';
import { styleOf } from '../../src/music/styles/styles';
import type { PianoStroke, Stroke } from '../../src/vocabulary';
import { chordNamed, HarmonyOfScore } from './harmony-of-score';

/** Each check gives one line for every violation; an empty list is a pass. Ids are those of the engine's figures. */
export type Check = (score: Score) => string[];

const where = (score: Score, stroke: Stroke<string>): string =>
  `${score.title} level ${score.level} ${score.clave.kind} ${score.clave.direction} tick ${stroke.tick} ${stroke.chord} ${stroke.names.join('+')}`;
const pianoStrokes = (score: Score): readonly PianoStroke[] => [
  ...score.parts.rightHand,
  ...(score.hands === 'tumbao' ? [] : score.parts.leftHand),
];

/** The hand that plays the figure: the left where the right is silent. */
const leadingHand = ({ parts }: Score): readonly PianoStroke[] => (parts.rightHand.length > 0 ? parts.rightHand : parts.leftHand);

/**
 * E2: every stroke's chord is the chord at tick + lead; an offbeat before a change leads by 240, a cell-ending stroke on 4 by 480, with
 * the bass (so not where a chord is written on 4, which the bass plays there); never over a barrier.
 */
export const checkLeads: Check = (score) => {
  const harmony = new HarmonyOfScore(score);
  const hand = leadingHand(score);
  const onsets = new Set(hand.map((stroke) => stroke.tick));
  return hand.flatMap((stroke) => {
    const faults: string[] = [];
    if (stroke.chord !== harmony.symbolAt(stroke.tick + stroke.leadTicks))
      faults.push(`E2 chord ${harmony.symbolAt(stroke.tick + stroke.leadTicks)} expected: ${where(score, stroke)}`);
    if (stroke.leadTicks > 0 && harmony.barred(stroke.tick, stroke.leadTicks)) {
      const push = score.bars.some((bar) => bar.chords.some((chord) => chord.push && chord.tick - 240 === stroke.tick));
      if (!push) faults.push(`E2 lead over a barrier: ${where(score, stroke)}`);
    }
    const bar = score.bars.find((candidate) => stroke.tick >= candidate.tick && stroke.tick < candidate.tick + candidate.ticks);
    // The second of two sixteenths goes with the first.
    if (bar?.kind !== 'groove' || score.meter !== '4/4' || stroke.tick % 240 !== 0) return faults;
    const step = (stroke.tick - bar.tick) / 240;
    const offbeatBeforeChange = step % 2 === 1 && harmony.changesAt(stroke.tick + 240) && !harmony.barred(stroke.tick, 240);
    const endsOnFour =
      step === 6 &&
      stroke.role !== 'approach' &&
      !onsets.has(stroke.tick + 240) &&
      !harmony.barred(stroke.tick, 480) &&
      !harmony.writtenAt(stroke.tick);
    const expected = offbeatBeforeChange ? 240 : endsOnFour ? 480 : 0;
    if (stroke.leadTicks !== expected) faults.push(`E2 lead ${stroke.leadTicks}, expected ${expected}: ${where(score, stroke)}`);
    return faults;
  });
};

/** Degrees that moving lines may put on a chord beside its tones, in semitones above the root. */
const LINE_SEMITONES = { minor: [0, 11, 10, 9, 7, 8], major: [7, 8, 9, 10, 0, 11], vamp: [7, 9, 10], guide: [], riff: [] } as const;

/** E3: chord tones, admitted tensions or approach notes that resolve by a step; no avoid note, no semitone inside the hand. */
export const checkTones: Check = (score) => {
  const strokes = pianoStrokes(score);
  const scale = new Set(scaleOf(score.key).map(pcOf));
  const faults: string[] = [];
  for (const hand of [score.parts.rightHand, score.hands === 'tumbao' ? [] : score.parts.leftHand]) {
    hand.forEach((stroke, index) => {
      if (stroke.role !== 'approach') return;
      const next = hand[index + 1] ?? (score.closed ? hand[0] : undefined);
      const low = stroke.midi[0] ?? 0;
      const target = next?.midi[0] ?? 99;
      if (Math.abs(low - target) > 2 || low === target) faults.push(`E3 approach does not resolve by step: ${where(score, stroke)}`);
    });
  }
  for (const stroke of strokes) {
    const chord = chordNamed(stroke.chord);
    const tones = new Set(chord.tones.map(({ semitones }) => semitones));
    stroke.midi.forEach((midi, index) => {
      const above = (((midi - chord.rootPc) % 12) + 12) % 12;
      const degree = stroke.degrees[index];
      if (degree === undefined || degreeSemitones[degree] !== above)
        faults.push(`E3 degree ${degree} is not ${above} semitones above the root: ${where(score, stroke)}`);
      if (stroke.role === 'approach') return;
      const avoid = above === 5 && tones.has(4) && chord.family !== 'sus';
      const naturalNine = above === 2 && (tones.has(1) || (tones.has(3) && tones.has(4)));
      if (avoid || naturalNine) faults.push(`E3 avoid note: ${where(score, stroke)}`);
      const line: readonly number[] = stroke.line ? LINE_SEMITONES[stroke.line] : [];
      const sixth = above === 9 && chord.family === 'major';
      const jazz =
        score.colour === 'jazz' &&
        (above === 2 || above === 9 || above === 1) &&
        (above === 1 ? chord.family === 'dominant' : scale.has((chord.rootPc + above) % 12));
      if (!tones.has(above) && !line.includes(above) && !sixth && !jazz)
        faults.push(`E3 no chord tone or admitted tension: ${where(score, stroke)}`);
    });
    for (let index = 1; index < stroke.midi.length; index++) {
      if ((stroke.midi[index] ?? 0) - (stroke.midi[index - 1] ?? 0) < 2)
        faults.push(`E3 semitone inside the hand: ${where(score, stroke)}`);
    }
  }
  return [...faults, ...checkInside(score)];
};

/** Inner notes lie strictly inside the octave that the hand holds before or after them. */
function checkInside(score: Score): string[] {
  const faults: string[] = [];
  let octave: PianoStroke | undefined;
  for (const stroke of score.parts.rightHand) {
    if (stroke.role === 'octave' || stroke.role === 'chord') octave = stroke;
    if (stroke.role !== 'inner' || octave?.chord !== stroke.chord) continue;
    const low = octave.midi[0] ?? 0;
    if (stroke.midi.some((midi) => midi <= low + 1 || midi >= low + 11)) {
      // A moving line may have gone on inside the chord: the next octave then holds the hand.
      const next = score.parts.rightHand.find((other) => other.tick > stroke.tick && (other.role === 'octave' || other.role === 'chord'));
      const nextLow = next?.midi[0] ?? low;
      if (stroke.midi.some((midi) => midi <= nextLow + 1 || midi >= nextLow + 11))
        faults.push(`E3 inner notes outside the octave: ${where(score, stroke)}`);
    }
  }
  return faults;
}

/** Moves of the octave line of guide strokes, net of lift, seam included: semitones, never negative. */
export function guideMoves(score: Score): number[] {
  const line = score.parts.rightHand.filter((stroke) => stroke.role === 'octave' || stroke.role === 'chord');
  return line.flatMap((stroke, index) => {
    const before = line[index - 1] ?? (score.closed ? line.at(-1) : undefined);
    if (!before || stroke.line !== 'guide' || before.line !== 'guide') return [];
    return [Math.abs((stroke.midi[0] ?? 0) - stroke.lift - ((before.midi[0] ?? 0) - before.lift))];
  });
}

/** E5: third and seventh (or sixth) of every chord of a bar or longer; third and root or fifth of plain triads. */
export const checkTelling: Check = (score) =>
  new HarmonyOfScore(score).spans().flatMap(({ from, to, symbol, chord }) => {
    const bars = score.bars.filter((bar) => bar.tick < to && bar.tick + bar.ticks > from);
    if (to - from < 1920 || bars.some((bar) => bar.kind !== 'groove')) return [];
    const sounded = new Set<number>();
    for (const stroke of pianoStrokes(score)) {
      const at = stroke.tick + stroke.leadTicks;
      const wrapped = at >= score.toTick ? at - score.toTick + score.fromTick : at;
      if (wrapped >= from && wrapped < to && stroke.role !== 'approach')
        for (const midi of stroke.midi) sounded.add((((midi - chord.rootPc) % 12) + 12) % 12);
    }
    const has = (...semitones: number[]) => semitones.some((value) => sounded.has(value));
    const written = (...semitones: number[]) => semitones.filter((value) => chord.tones.some((tone) => tone.semitones === value));
    const third = written(3, 4).slice(-1);
    const seventh = chord.family === 'diminished' ? written(9, 11).slice(0, 1) : written(10, 11).slice(0, 1);
    const sixth = seventh.length === 0 ? written(9) : [];
    const missing: string[] = [];
    if (third.length > 0 && !has(...third)) missing.push('third');
    // Plain colour gives a written maj7 as a sixth chord.
    const asSixth = score.colour === 'plain' && chord.family === 'major' ? [9] : [];
    if (seventh.length > 0 && !has(...seventh, ...asSixth)) missing.push('seventh');
    if (sixth.length > 0 && !has(...sixth)) missing.push('sixth');
    if (seventh.length === 0 && sixth.length === 0 && !has(0, 7, 6, 8)) missing.push('root or fifth');
    return missing.map((what) => `E5 no ${what} in ${symbol}: ${score.title} level ${score.level} tick ${from}`);
  });

/** Rhythm grids of the complete groove cycles of the right hand (or left when it is silent), with the direction of each. */
export function cycleGrids(score: Score): { readonly grid: boolean[]; readonly direction: '2-3' | '3-2'; readonly bar: number }[] {
  const hand = score.parts.rightHand.length > 0 ? score.parts.rightHand : score.parts.leftHand;
  const onsets = new Set(hand.map((stroke) => stroke.tick));
  return score.bars.flatMap((bar, index) => {
    const next = score.bars[index + 1];
    if (!next || bar.cycleStep !== 0 || next.cycleStep !== 8 || bar.kind !== 'groove' || next.kind !== 'groove') return [];
    return [
      {
        bar: bar.index,
        direction: bar.side === 2 ? ('2-3' as const) : ('3-2' as const),
        grid: Array.from({ length: 16 }, (_, step) => onsets.has(bar.tick + step * 240)),
      },
    ];
  });
}

/** E8: no generated figure is crossed, cycle by cycle. */
export const checkUncrossed: Check = (score) =>
  cycleGrids(score).flatMap(({ grid, direction, bar }) =>
    alignment(grid, { kind: score.clave.kind, direction }).verdict === 'crossed'
      ? [
          `E8 crossed at bar ${bar + 1}: ${score.title} level ${score.level} ${score.clave.kind} ${direction} ${grid.map((on) => (on ? 'x' : '.')).join('')}`,
        ]
      : [],
  );

/** E9, per score: next root on 4 and no beat 1 but the first time (anticipated styles, one or two chords a bar), range. */
export const checkBass: Check = (score) => {
  const harmony = new HarmonyOfScore(score);
  const faults: string[] = [];
  for (const stroke of score.parts.bass) {
    const midi = stroke.midi[0] ?? 0;
    if (midi < 28 || midi > 55) faults.push(`E9 out of range: ${where(score, stroke)}`);
    if (stroke.chord !== harmony.symbolAt(stroke.tick + stroke.leadTicks)) faults.push(`E9 chord: ${where(score, stroke)}`);
  }
  for (const bar of score.bars) {
    if (bar.kind !== 'groove' || bar.ticks !== 1920) continue;
    const onFour = score.parts.bass.find((stroke) => stroke.tick === bar.tick + 1440);
    const writtenOnFour = harmony.writtenAt(bar.tick + 1440);
    if (!harmony.barred(bar.tick + 1440, 480) && !writtenOnFour) {
      const next = harmony.symbolAt(bar.tick + 1920);
      const pc = next === 'N.C.' ? null : chordNamed(next).bassPc;
      if (pc !== null && (!onFour || (onFour.midi[0] ?? 0) % 12 !== pc || onFour.leadTicks !== 480))
        faults.push(`E9 next root ${next} not on 4: ${score.title} bar ${bar.index + 1}`);
    }
    const onOne = score.parts.bass.find((stroke) => stroke.tick === bar.tick);
    const previousOnFour =
      harmony.writtenAt(bar.tick - 480) || (score.closed && bar.tick === score.fromTick && harmony.writtenAt(score.toTick - 480));
    if (onOne && !onOne.firstPassOnly && !previousOnFour) faults.push(`E9 beat 1 sounds: ${score.title} bar ${bar.index + 1}`);
  }
  return faults;
};

/** Leaps of the bass in semitones, seam included, first-time notes left out. */
export function bassLeaps(score: Score): number[] {
  const line = score.parts.bass.filter((stroke) => !stroke.firstPassOnly);
  return line.flatMap((stroke, index) => {
    const before = line[index - 1] ?? (score.closed ? line.at(-1) : undefined);
    return before ? [Math.abs((stroke.midi[0] ?? 0) - (before.midi[0] ?? 0))] : [];
  });
}

/** Spelling agrees with pitch: every name is its MIDI note (E10 for the part that shows in scores). */
export const checkNames: Check = (score) =>
  [...pianoStrokes(score), ...score.parts.bass].flatMap((stroke) =>
    stroke.names.flatMap((name, index) => {
      const match = /^([A-G](?:#{1,2}|b{1,2})?)(-?\d)$/.exec(name);
      const midi = stroke.midi[index] ?? 0;
      const pc = match?.[1] ? pcOf(match[1]) : -1;
      return pc === midi % 12 ? [] : [`E10 ${name} is not ${midi}: ${where(score, stroke)}`];
    }),
  );

/**
 * Styles that ask for it have every change over a barline taken early by the piano, an eighth or (with the bass) a quarter before; not
 * across a barrier, and not where a chord is written on beat 4, which is played there.
 */
export const checkAnticipation: Check = (score) => {
  if (styleOf(score.style).anticipation !== 'always' || score.form.changes === 'as played') return [];
  const harmony = new HarmonyOfScore(score);
  return score.bars.flatMap((bar, index) => {
    const end = bar.tick + bar.ticks;
    const last = index === score.bars.length - 1;
    const next = harmony.symbolAt(end);
    if (bar.kind !== 'groove' || bar.ticks !== 1920 || (last && !score.closed) || next === 'N.C.' || !harmony.changesAt(end)) return [];
    if (harmony.barred(end - 480, 480) || harmony.writtenAt(end - 480)) return [];
    const early = leadingHand(score).some(
      ({ tick, leadTicks, chord }) => tick >= bar.tick && tick < end && tick + leadTicks >= end && chord === next,
    );
    return early ? [] : [`E2 ${next} not taken early: ${score.title} level ${score.level} bar ${bar.index + 1}`];
  });
};

/** The widest that a hand may be asked to reach, in half steps: a sixth, an octave, a ninth, a tenth (sixth: common practice, no source). */
export const REACH = { 'less than an octave': 9, octave: 12, ninth: 14, tenth: 16 } as const;

/** No stroke of either hand stretches further than the player has set. */
export const checkStretch =
  (reach: number): Check =>
  (score) =>
    [...score.parts.rightHand, ...score.parts.leftHand].flatMap((stroke) =>
      (stroke.midi.at(-1) ?? 0) - (stroke.midi[0] ?? 0) > reach ? [`stretch over ${reach}: ${where(score, stroke)}`] : [],
    );

/** Every check that holds for each score by itself. */
export const CHECKS: readonly Check[] = [
  checkLeads,
  checkTones,
  checkTelling,
  checkUncrossed,
  checkBass,
  checkNames,
  checkAnticipation,
  checkStretch(REACH.octave),
];
