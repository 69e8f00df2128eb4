import { printedNote } from './spoken';

const passes = (clean: number, of: number): string => `${clean} of ${of} clean`;

/** What the Drills place and the line over the board say. */
export const DRILLS = {
  intro: 'Each takes the chart that lies on the desk. Play it on a keyboard, tap it, clap it, or judge it by your own ear.',
  begin: 'Begin',
  names: {
    'clap the clave': 'Clap the clave',
    'montuno rhythm': 'The montuno’s rhythm over the pulse',
    'hands apart': 'Hands apart, then together',
    'tempo ladder': 'Tempo ladder',
    gap: 'The gap',
    'twelve keys': 'Twelve keys',
    'fast changes': 'Fast changes',
    'solo scaffold': 'Solo on guide tones',
    'which side': 'Which side?',
    'at sight': 'Reading at sight',
    'lost and found': 'Lost and found',
  },
  /** One line on what it is for; it claims no more than teachers and the studies named in the sources say. */
  why: {
    'clap the clave': 'Son and rumba, from either side: whoever can clap it against the pulse has something to hang the hands on.',
    'montuno rhythm': 'Rhythm first, on one note or tapped: notes can wait until it sits.',
    'hands apart': 'Left, right, then both, three clean passes each: the usual way to find which hand is unsure.',
    'tempo ladder': 'Up a step after three clean passes of four, down after two that were not, sometimes a burst at the goal.',
    gap: 'The band plays four bars and is silent: do you still agree with it when it comes back?',
    'twelve keys': 'The same figure through all keys; a key that was not clean comes round again.',
    'fast changes': 'The cycle of your chart with the most changes, looped: hand shapes first, then the rhythm.',
    'solo scaffold': 'Guide tones and clave only; the line is yours.',
    'which side': 'By ear: is the bar you hear the 2-side or the 3-side? What you miss comes back sooner.',
    'at sight': 'A chart you have never seen, half a minute to look, then play. The number makes the same chart for a whole class.',
    'lost and found': 'The band goes round once more or drops a bar, without a word. How many bars until you are back with the clave?',
  },
  barName: 'Drill',
  end: 'End the drill',
  rate: { name: 'How was that pass?', clean: 'Clean', notClean: 'Not yet' },
  passes: (clean: number, of: number): string => (of === 0 ? 'Press Play.' : passes(clean, of)),
  done: 'Done. Let it rest, or end the drill here.',
  clave: (direction: string, kind: string, clean: number): string => `${kind} ${direction}: ${clean} of 3 clean in a row`,
  hand: (hand: 'left' | 'right' | 'both', clean: number): string =>
    `${hand === 'both' ? 'both hands' : `${hand} hand`}: ${clean} of 3 clean in a row`,
  ladder: (tempo: number, goal: number, clean: number, burst: boolean): string =>
    burst ? `A burst at ${goal}, not judged: just touch it.` : `half note = ${tempo} of ${goal}, ${clean} clean of the last four`,
  gapLine: (on: number, off: number): string => `${on} bars with the band, ${off === 1 ? '1 bar' : `${off} bars`} without`,
  /** Each time the band came back in the last pass: how many milliseconds behind it the player was (ahead: below 0), or null where that is too little to count. */
  drifts: (behind: readonly (number | null)[]): string =>
    behind.length === 0
      ? ''
      : `When the band came back: ${behind
          .map((ms) => (ms === null ? 'together' : `${Math.round(Math.abs(ms))} ms ${ms > 0 ? 'behind' : 'ahead'}`))
          .join(', then ')}.`,
  keyLine: (key: string | null, done: number): string =>
    key === null ? 'All twelve keys are done.' : `${printedNote(key)}, ${done} of 12 done`,
  order: { name: 'In what order', fourths: 'fourths', 'half steps': 'half steps', mixed: 'mixed' },
  side: {
    hear: 'Hear it',
    again: 'Hear it again',
    two: 'It begins on the 2-side',
    three: 'It begins on the 3-side',
    right: (side: number): string => `Yes: that was the ${side}-side.`,
    wrong: (side: number): string => `That was the ${side}-side. Hear it again: which bar has a stroke on 2?`,
    tally: (right: number, asked: number): string => `${right} of ${asked} right`,
    sounds: {
      clave: 'clave alone',
      'montuno with clave': 'montuno with clave',
      montuno: 'montuno alone',
      percussion: 'percussion alone',
      'band without clave': 'the band without clave',
    },
    listen: 'What you hear',
    leave: 'End',
  },
  sight: {
    number: 'Chart number',
    style: 'Style',
    difficulty: 'Difficulty',
    difficulties: { 1: 'one chord a bar', 2: 'ii–V–I, more keys', 3: 'two chords a bar', 4: 'two sections, any key' },
    look: 'Show the chart',
    looking: (seconds: number): string => `${seconds} seconds to look. Hands on the lap.`,
    play: 'Play with the band, without its piano',
    answer: 'Show a figure for it',
    another: 'Another chart',
    title: (seed: number): string => `Fresh chart ${seed}`,
    kept: 'The chart goes onto your shelf when you play it.',
  },
  lost: {
    number: 'Number',
    play: 'Play, and keep your place',
    reveal: 'What did the band do?',
    again: (bar: number, bars: number): string => `From bar ${bar} it played ${bars} bars once more.`,
    dropped: (bar: number, bars: number): string =>
      `At bar ${bar} it left out ${bars === 1 ? 'one bar: everything turned over' : `${bars} bars`}.`,
    nothing: 'It played the form as it stands.',
    back: (bars: number | null): string =>
      bars === null
        ? 'You did not come back after it.'
        : bars === 0
          ? 'You were with it at once.'
          : `You were back after ${bars === 1 ? 'one bar' : `${bars} bars`}.`,
    tally: (back: number, of: number): string => `Back within three bars: ${back} of ${of}.`,
    ask: 'Were you back within three bars, each time?',
    yes: 'Each time',
    no: 'Not each time',
    write: 'Write it in the journal',
    written: 'Written in the journal.',
    counts: 'Bars are counted as you heard them. How many went by before you were back? Two or three is a good night.',
    another: 'Another one',
    tooShort: 'This chart is too short for it: open one of sixteen bars or more.',
  },
  caution: 'Stop when it hurts, shake out and rest; if it keeps hurting, see a teacher or a clinician.',
} as const;
