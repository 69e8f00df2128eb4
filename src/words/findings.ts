import type { FindingFacts, LoopBars } from '../practice/finding';
import { printedChord, SPOKEN } from './spoken';

type Facts<Kind extends FindingFacts['kind']> = Extract<FindingFacts, { readonly kind: Kind }>;
type Count = (step: number) => string;
type Sentences = { readonly [Kind in FindingFacts['kind']]: (facts: Facts<Kind>, count: Count) => string };

const bar = (index: number): string => `bar ${index + 1}`;
const share = (some: number, of: number): string => (some === of ? `all ${of}` : `${some} of ${of}`);
const times = (number: number): string => (number === 2 ? 'twice' : `${number} times`);
const millis = (value: number): string => `${Math.round(Math.abs(value))} ms`;

const where = (bars: LoopBars | null): string => (bars ? `In bars ${bars.fromBar + 1}–${bars.toBar} you` : 'You');

const displacement = (steps: number): string => {
  const many = Math.abs(steps);
  const far = many === 1 ? 'an eighth' : many === 2 ? 'a beat' : many === 4 ? 'two beats' : many === 6 ? 'three beats' : `${many} eighths`;
  return `${far} ${steps > 0 ? 'late' : 'early'}`;
};

const SENTENCES: Sentences = {
  silent: () => 'Nothing arrived from your instrument in this pass. Check that it is chosen, then play along from the count-in.',
  crossed: ({ fromStart, bar: at }) =>
    fromStart
      ? 'Your pattern is right, and it lies on the other side of the clave: start it one bar later. It happens to everyone; the loop starts where the side does.'
      : `You began on the right side; from ${bar(at)} on you were on the other one. Listen for the clave in the bar before, and come back in on it.`,
  displaced: ({ steps, fromStart, bar: at }) =>
    steps === 1 && fromStart
      ? 'Your pattern is right, and all of it arrives an eighth late. If it felt in time, your speaker or instrument is slow: measure its delay. If not, find 1 with your foot first, then let the hands come in.'
      : `Your pattern is right, and it lies ${displacement(steps)}${fromStart ? '' : ` from ${bar(at)} on`}. Find 1 with your foot first, then let the hands come in.`,
  'other clave': ({ heard, asked }) =>
    `That was ${heard} clave, cleanly; this chart asks for ${asked}. They differ in one stroke: the last of the 3-side is on ${asked === 'son' ? '4' : 'the & of 4'}.`,
  stopped: ({ bar: at }) => `You played up to ${bar(at)}. Go in one bar before it and play just over the join.`,
  missed: ({ count: number, of, step, bar: at }, count) =>
    step === null
      ? `${share(number, of)} strokes were left out, most in ${bar(at)}. Clap the rhythm of that bar once, then play it.`
      : `The stroke on ${count(step)} was left out ${times(number)}, most in ${bar(at)}. Say it aloud as you play it.`,
  extra: ({ count: number, step, bar: at }, count) =>
    step === null
      ? `${number} strokes came where the figure rests, most in ${bar(at)}. The rests are part of the pattern: leave them empty.`
      : `There is a rest on ${count(step)}, and it was struck ${times(number)}, most in ${bar(at)}. Let the foot take that beat.`,
  'late chords': ({ count: number, of, step, bar: at }, count) =>
    `The old chord was still there on ${count(step)} at ${share(number, of)} changes, most in ${bar(at)}. The last stroke before the barline already belongs to the next chord.`,
  'wrong notes': ({ count: number, of, chord, bar: at }) =>
    chord === null
      ? `${share(number, of)} strokes had other notes, most in ${bar(at)}. Play that bar as plain chords first, then in rhythm.`
      : `Over ${printedChord(chord)} other notes sounded ${times(number)}, most in ${bar(at)}. Find that hand shape without the rhythm, then put it back.`,
  'wrong octave': ({ count: number, of, bar: at }) =>
    `The notes are right, and ${share(number, of)} strokes lie in another octave, most in ${bar(at)}. Look once at where the hand goes next.`,
  rushing: ({ msPerCycle, bars }) =>
    `${where(bars)} get ahead of the band, about ${millis(msPerCycle)} in every clave cycle. Give the long notes their full length and lean on the bass.`,
  dragging: ({ msPerCycle, bars }) =>
    `${where(bars)} fall behind the band, about ${millis(msPerCycle)} in every clave cycle. Take ${bars ? 'those bars' : 'it'} a little slower, where the next hand shape is ready in time.`,
  swung: ({ shareOfStep }) =>
    `Your offbeats come ${Math.round(100 * shareOfStep)} % of an eighth late, as in swing. This music is even: say "one and two and" in equal lengths and play to that.`,
  'step off': ({ step, side, meanMs }, count) =>
    `One stroke stands out: ${count(step)}${side === null ? '' : ` of the ${side}-side`} comes ${millis(meanMs)} ${meanMs < 0 ? 'early' : 'late'}, and the others are in place. Loop that bar and listen to that stroke alone.`,
  uneven: ({ spreadMs }) =>
    `The strokes vary by about ${millis(spreadMs)} from one to the next, though they are all there. Slower and softer for four rounds brings them together.`,
  offset: ({ ms }) =>
    `Everything lies ${millis(ms)} ${ms < 0 ? 'ahead of' : 'behind'} the band, and evenly so. ${ms < 0 ? 'Sit back and let the bass come first.' : 'Think of the stroke a little before you play it.'}`,
  'hands apart': ({ leftBehindMs }) =>
    `Your ${leftBehindMs > 0 ? 'left hand comes' : 'right hand comes'} ${millis(leftBehindMs)} after the ${leftBehindMs > 0 ? 'right' : 'left'}. Play the two together on one chord, softly, until they sound like one.`,
  'cut short': ({ count: number, of, step, bar: at }, count) =>
    `The stroke on ${count(step)} was let go too soon, ${share(number, of)}, most in ${bar(at)}. It rings over the silent 1 that follows: hold it through.`,
  'inner loud': () => 'The inner notes are as loud as the octaves. Let the octaves sing, and play what is inside them at half the weight.',
};

/** What is said after a take. */
export const FINDINGS = {
  /**
   * One thing to work on, what it was and what helps; steps are counted as in 4/4, or in six. Example: "The old chord was still there on
   * the & of 4 at 3 of 4 changes …".
   */
  sentence: (facts: FindingFacts, sixEight = false): string =>
    (SENTENCES[facts.kind] as (facts: FindingFacts, count: Count) => string)(facts, (step) => SPOKEN.count(step, sixEight)),
  /** When there is nothing to say. */
  nothing: 'That was in place and in time. Try it a little faster, in another key, or with the clave off.',
} as const;
