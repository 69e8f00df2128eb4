import type { Colour, Degree } from '../../vocabulary';
import type { Chord } from '../chord/chord';
import { diatonicPcs, type Key } from '../pitch/key';
import { degreeNumber, degreeSemitones, mod12, pcOf } from '../pitch/spell';
import type { HarmonySpan } from './timeline';

/** A tone that may sound on a chord. */
export interface AdmittedTone {
  readonly degree: Degree;
  /** 0 to 11 above the root. */
  readonly semitones: number;
  /** `third` and `seventh` (a sixth where there is no seventh) say which chord it is; `body` is root and fifth; `tension` is the rest. */
  readonly kind: 'third' | 'seventh' | 'body' | 'tension';
}

/** What the search may use on a chord, and what it must sound to tell which chord it is. */
export interface AdmittedTones {
  readonly tones: readonly AdmittedTone[];
  /** Degrees that are to sound within the chord: its third, and its seventh or sixth. */
  readonly telling: readonly Degree[];
  /** Root and fifth of a chord without seventh or sixth: one of them is to sound. Empty for other chords. */
  readonly body: readonly Degree[];
  /** Written alterations: what makes the chord the one that was asked for, beside what it must sound. */
  readonly written: readonly Degree[];
  /** What a sixth without the fifth costs on a major chord: it sounds like the chord's own vi, except on a tonic written as a sixth. */
  readonly bareSixth: 'free' | 'cheap' | 'dear';
}

/**
 * The tones admitted on a chord where it stands.
 *
 * Plain colour keeps to the chord as written up to its seventh, and gives a written maj7 as a sixth chord (salsa, son, mambo
 * and coro want the tonic as triad or sixth: common practice, no source). Jazz colour adds a ninth where it is diatonic, a
 * thirteenth likewise, and ♭9 and ♭13 on dominants of minor. Written tensions are always admitted, except a natural 11 over
 * a major third and a natural 9 beside ♭9 or ♯9 (common practice, no source).
 */
export function admittedTones(span: HarmonySpan, next: HarmonySpan | undefined, colour: Colour): AdmittedTones {
  const chord = span.chord;
  if (!chord) return { tones: [], telling: [], body: [], written: [], bareSixth: 'free' };
  const written = chord.tones.map(({ degree }) => degree);
  const added = colour === 'plain' ? [] : addedTensions(chord, written, next, span.key);
  const degrees = withoutClashes([...(colour === 'plain' ? plainDegrees(chord, written) : written), ...added]);
  const tones = degrees.map((degree) => ({ degree, semitones: degreeSemitones[degree], kind: kindOf(degree, degrees) }));
  const telling = tellingOf(tones.filter(({ degree }) => !added.includes(degree)));
  const body = telling.length > 1 ? [] : tones.filter(({ kind }) => kind === 'body').map(({ degree }) => degree);
  const onTonic = chord.rootPc === pcOf(span.key.tonic) && written.includes('6');
  const alterations = ALTERATIONS.filter((degree) => written.includes(degree) && degrees.includes(degree));
  return { tones, telling, body, written: alterations, bareSixth: chord.family !== 'major' ? 'free' : onTonic ? 'cheap' : 'dear' };
}

const ALTERATIONS: readonly Degree[] = ['#11', 'b9', '#9', 'b13'];

const SEVENTHS: readonly Degree[] = ['b7', '7', 'bb7'];
const isSeventh = (degree: Degree): boolean => SEVENTHS.includes(degree);

function kindOf(degree: Degree, degrees: readonly Degree[]): AdmittedTone['kind'] {
  if (degree === '3' || degree === 'b3') return 'third';
  if ((degree === '4' || degree === '2') && !degrees.some((other) => other === '3' || other === 'b3')) return 'third';
  if (isSeventh(degree)) return 'seventh';
  if (degree === '6' && !degrees.some(isSeventh)) return 'seventh';
  const number = degreeNumber(degree);
  return number === 1 || number === 5 ? 'body' : 'tension';
}

function tellingOf(tones: readonly AdmittedTone[]): readonly Degree[] {
  const third = tones.find((tone) => tone.kind === 'third');
  const seventh = tones.find((tone) => tone.kind === 'seventh');
  return [...(third ? [third.degree] : []), ...(seventh ? [seventh.degree] : [])];
}

/** The chord as a dance band plays it: sixth for maj7, no ninths or thirteenths unless an alteration is written. */
function plainDegrees(chord: Chord, written: readonly Degree[]): Degree[] {
  const major = chord.family === 'major';
  const kept = written.flatMap((degree): Degree[] => {
    if (major && degree === '7') return written.includes('6') ? [] : ['6'];
    if (degree === '9' || degree === '13' || degree === '11') return chord.family === 'sus' && degree !== '13' ? [degree] : [];
    return [degree];
  });
  return kept;
}

/** Ninths and thirteenths that jazz colour adds, by the chord's function. */
function addedTensions(chord: Chord, written: readonly Degree[], next: HarmonySpan | undefined, key: Key): Degree[] {
  const scale = diatonicPcs(key);
  const diatonic = (semitones: number) => scale.has(mod12(chord.rootPc + semitones));
  const has = (number: number) => written.some((degree) => degreeNumber(degree) === number);
  const added: Degree[] = [];
  if (chord.family === 'dominant') {
    const ofMinor = leadsToMinor(chord, next, key);
    if (!has(9)) added.push(...(ofMinor ? (['b9'] as const) : diatonic(2) ? (['9'] as const) : []));
    if (!has(13) && !has(5 + 8) && !written.includes('#5')) added.push(...(!ofMinor && diatonic(9) ? (['13'] as const) : []));
    return added;
  }
  if (chord.family === 'major' || chord.family === 'minor') {
    if (!has(9) && diatonic(2)) added.push('9');
    if (chord.family === 'major' && !has(6) && !has(13) && !written.includes('7') && diatonic(9)) added.push('6');
  }
  if (chord.family === 'sus' && !has(9) && !has(2) && diatonic(2)) added.push('9');
  return added;
}

/** A dominant whose target a fifth below is minor: the next chord, or the tonic of a minor key, or the key's minor chord on that degree. */
function leadsToMinor(chord: Chord, next: HarmonySpan | undefined, key: Key): boolean {
  const target = mod12(chord.rootPc + 5);
  if (next?.chord && next.chord.rootPc === target) return next.chord.tones.some(({ degree }) => degree === 'b3');
  if (key.mode === 'minor' && target === pcOf(key.tonic)) return true;
  const scale = diatonicPcs(key);
  return !(scale.has(mod12(target + 4)) && scale.has(target)) && scale.has(mod12(target + 3));
}

/** No natural 11 over a major third, no natural 9 beside an altered one. */
function withoutClashes(degrees: readonly Degree[]): Degree[] {
  const altered = degrees.includes('b9') || degrees.includes('#9');
  return [...new Set(degrees)].filter((degree) => {
    if ((degree === '11' || degree === '4') && degrees.includes('3')) return false;
    return !(altered && (degree === '9' || degree === '2'));
  });
}
