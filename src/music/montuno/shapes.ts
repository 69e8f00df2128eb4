import type { Colour, Degree } from '../../vocabulary';
import type { AdmittedTone, AdmittedTones } from '../harmony/admitted-tones';
import type { LinePull } from '../harmony/plan-lines';
import { degreeSemitones, mod12 } from '../pitch/spell';
import { COSTS, innerDegreeCost, octaveDegreeCost } from './costs';

/** Pitches here are semitones above the tonic, so that a figure does not depend on the key. */
const OCTAVE_WINDOW = { from: -8, to: 9 } as const;

/** A note of a hand shape. */
export interface ShapeNote {
  /** Semitones above the tonic. */
  readonly pitch: number;
  readonly degree: Degree;
}

/** One hand position: the lower octave note (doubled above) and the notes inside it. */
export interface Shape {
  readonly octave: ShapeNote;
  readonly octaveKind: AdmittedTone['kind'];
  /** Ascending; empty when nothing fits. */
  readonly inner: readonly ShapeNote[];
  /** What the shape costs by itself. */
  readonly cost: number;
}

/** What is asked of a hand position. */
export interface ShapeQuestion {
  /** Semitones of the chord's root above the tonic, 0 to 11. */
  readonly root: number;
  readonly admitted: AdmittedTones;
  readonly colour: Colour;
  /** What of the hand is struck while the chord lasts: with both octave and inner notes the chord can tell what it is. */
  readonly sounds: 'both' | 'octave' | 'inner';
  readonly pull: LinePull | undefined;
}

/**
 * Every shape that a hand may take on a chord, in a fixed order.
 *
 * Hard rules: inner notes strictly inside the octave and at least a whole tone from each other and from its ends; no natural 9
 * beside an altered one and no 11 over a major third (both already excluded by the admitted tones). Everything else is a cost.
 */
export function shapesOn({ root, admitted, colour, sounds, pull }: ShapeQuestion): readonly Shape[] {
  const octaves = octaveTones(admitted, pull);
  const shapes: Shape[] = [];
  for (let pitch = OCTAVE_WINDOW.from; pitch <= OCTAVE_WINDOW.to; pitch++) {
    const tone = octaves.find(({ semitones }) => mod12(root + semitones - pitch) === 0);
    if (!tone) continue;
    const offered = innerSets(root, pitch, innerTones(admitted, pull)).map((inner) =>
      shape(pitch, tone, inner, { root, admitted, colour, sounds, pull }),
    );
    const least = Math.min(...offered.map(({ cost }) => cost));
    shapes.push(...offered.filter(({ cost }) => cost <= least + COSTS.worthOffering));
  }
  return shapes;
}

function octaveTones(admitted: AdmittedTones, pull: LinePull | undefined): readonly AdmittedTone[] {
  const usual = admitted.tones.filter(({ kind }) => kind !== 'tension');
  const base = usual.length > 0 ? usual : admitted.tones;
  if (pull?.row.place !== 'octave' || base.some(({ degree }) => degree === pull.degree)) return base;
  return [...base, { degree: pull.degree, semitones: degreeSemitones[pull.degree], kind: 'body' }];
}

function innerTones(admitted: AdmittedTones, pull: LinePull | undefined): readonly AdmittedTone[] {
  if (pull?.row.place !== 'inside' || admitted.tones.some(({ degree }) => degree === pull.degree)) return admitted.tones;
  return [...admitted.tones, { degree: pull.degree, semitones: degreeSemitones[pull.degree], kind: 'seventh' }];
}

interface Inside {
  readonly pitch: number;
  readonly tone: AdmittedTone;
}

/** Pairs of tones inside the octave above `octave`, a whole tone or more apart; single notes where no pair fits. */
function innerSets(root: number, octave: number, tones: readonly AdmittedTone[]): readonly (readonly Inside[])[] {
  const inside = tones
    .map((tone) => ({ pitch: octave + mod12(root + tone.semitones - octave), tone }))
    .filter(({ pitch }) => pitch - octave >= 2 && octave + 12 - pitch >= 2)
    .sort((a, b) => a.pitch - b.pitch);
  const pairs = inside.flatMap((low, index) =>
    inside
      .slice(index + 1)
      .filter((high) => high.pitch - low.pitch >= 2)
      .map((high) => [low, high]),
  );
  if (pairs.length > 0) return pairs;
  return inside.length > 0 ? inside.map((only) => [only]) : [[]];
}

function shape(pitch: number, tone: AdmittedTone, inner: readonly Inside[], question: ShapeQuestion): Shape {
  const { admitted, colour, pull } = question;
  const sounding = [tone.degree, ...inner.map((note) => note.tone.degree)];
  const onLine = pull?.row.place === 'octave' ? tone.degree === pull.degree : inner.some((note) => note.tone.degree === pull?.degree);
  let cost = pull && onLine ? 0 : octaveDegreeCost(tone.degree, tone.kind, colour);
  if (pull && !onLine) cost += COSTS.offTheLine;
  for (const note of inner) cost += innerDegreeCost(note.tone.degree, note.tone.kind, tone.kind);
  cost += missingCost(question, tone.degree, inner);
  if (sounding.includes('6') && !sounding.includes('5')) cost += COSTS.bareSixth[admitted.bareSixth];
  const [low, high] = inner;
  if (low && high) cost += COSTS.innerInterval[high.pitch - low.pitch] ?? 30;
  else cost += COSTS.oneInner;
  if (low && low.pitch - pitch === 2) cost += COSTS.besideOctave;
  const top = high ?? low;
  if (top && pitch + 12 - top.pitch === 2) cost += COSTS.besideOctave;
  const beyond = Math.abs(pitch) - COSTS.register.free;
  if (beyond > 0) cost += beyond * COSTS.register.perSemitone;
  return {
    octave: { pitch, degree: tone.degree },
    octaveKind: tone.kind,
    inner: inner.map((note) => ({ pitch: note.pitch, degree: note.tone.degree })),
    cost,
  };
}

/** What it costs that degrees which tell the chord are not struck; those that the moving line itself sounds within the chord count as struck. */
function missingCost({ admitted, sounds, pull }: ShapeQuestion, octave: Degree, inner: readonly Inside[]): number {
  const inside = inner.map(({ tone }) => tone.degree);
  const struck = sounds === 'both' ? [octave, ...inside] : sounds === 'inner' ? inside : [octave];
  const unsounded = admitted.telling.filter((degree) => !struck.includes(degree) && !pull?.within.includes(degree)).length;
  const rootless = admitted.body.length > 0 && !admitted.body.some((degree) => struck.includes(degree)) ? 1 : 0;
  if (sounds === 'inner') return COSTS.missingInside * unsounded;
  if (sounds === 'octave') return 0;
  const altered = admitted.written.some((degree) => struck.includes(degree));
  const plain = altered || admitted.written.length === 0 ? 0 : COSTS.missingAlteration;
  const lydian = admitted.written.includes('#11') && !struck.includes('#11') ? COSTS.missingSharpEleven : plain;
  return COSTS.missingTelling * (unsounded + rootless) + lydian;
}

/** What it costs the hand to go from one shape to the next. */
export function shapeStep(from: Shape, to: Shape): number {
  const moved = Math.abs(to.octave.pitch - from.octave.pitch);
  let cost: number = COSTS.octaveMove[moved] ?? 230;
  const count = Math.min(from.inner.length, to.inner.length);
  cost += Math.abs(from.inner.length - to.inner.length) * COSTS.innerCount;
  for (let index = 0; index < count; index++) {
    cost += Math.abs((to.inner[index]?.pitch ?? 0) - (from.inner[index]?.pitch ?? 0)) * COSTS.innerMove;
  }
  return cost;
}
