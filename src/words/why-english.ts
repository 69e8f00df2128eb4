import type { Device, LineName, StrokeReason } from '../vocabulary';
import { SPOKEN } from './spoken';
import type { WhyFacts, WhyNote } from './why-facts';

/** The sentence about a stroke in English: what it is, how it came there and where it is struck, then anything out of the ordinary. */
export function whyInEnglish(facts: WhyFacts): string {
  const remarks = [lineRemark(facts), deviceRemark(facts), fallbackRemark(facts), firstPassRemark(facts), editRemark(facts)].filter(
    (remark) => remark !== '',
  );
  return [identity(facts), placeAndMove(facts), ...remarks].join(' ');
}

const degree = (note: WhyNote): string => SPOKEN.degrees[note.degree];
const isBass = ({ role }: WhyFacts): boolean => role === 'root' || role === 'fifth' || role === 'third';

function identity(facts: WhyFacts): string {
  const { outer, inner, chord, role } = facts;
  const notes = SPOKEN.list(inner.map(({ note }) => note));
  const degrees = SPOKEN.list(inner.map(degree));
  if (!outer) return `${notes} are the ${degrees} of ${chord}${role === 'inner' ? ', inside the octave' : ''}.`;
  if (role === 'approach') return `${outer.note} is an approach note: it leads by step into the next stroke.`;
  if (role === 'root' && outer.degree !== '1') return `${outer.note} is the bass note written in ${chord}.`;
  return `${outer.note} is the ${degree(outer)} of ${chord}${inner.length === 0 ? '' : `, with ${notes} inside, its ${degrees}`}.`;
}

function placeAndMove(facts: WhyFacts): string {
  const { outer, move, chord } = facts;
  const struck = `struck ${place(facts)}`;
  const subject = outer ? 'It' : 'They';
  if (!move) return `${subject} ${outer ? 'is' : 'are'} ${struck}.`;
  const mover = outer ? 'It' : 'The line';
  const origin = `${move.from.note}, the ${degree(move.from)} of ${move.fromChord}`;
  if (move.semitones !== 0) return `${mover} ${moved(move.semitones)} from ${origin}, and it is ${struck}.`;
  if (move.fromChord === chord) return `${mover} repeats the note before, and it is ${struck}.`;
  return `${mover} stays on ${origin}, and it is ${struck}.`;
}

const INTERVALS = [
  '',
  'a half step',
  'a whole step',
  'a minor third',
  'a major third',
  'a fourth',
  'a tritone',
  'a fifth',
  'a minor sixth',
  'a major sixth',
  'a minor seventh',
  'a major seventh',
  'an octave',
] as const;

/** `rises a half step`, `leaps down a fifth`. */
function moved(semitones: number): string {
  const size = Math.abs(semitones);
  const interval = INTERVALS[size] ?? `${size} half steps`;
  if (size <= 2) return `${semitones > 0 ? 'rises' : 'falls'} ${interval}`;
  return `leaps ${semitones > 0 ? 'up' : 'down'} ${interval}`;
}

function place(facts: WhyFacts): string {
  const { step, sixEight, side } = facts;
  const where = `on ${SPOKEN.count(step, sixEight)} of the ${side}-side`;
  return [where, clave(facts.claveStroke), lead(facts)].filter((part) => part !== '').join(', ');
}

const CLAVE_STROKES: Readonly<Record<NonNullable<StrokeReason['claveStroke']>, string>> = {
  first: 'with the first clave stroke',
  second: 'with the second clave stroke (bombo)',
  third: 'with the third clave stroke (ponche)',
  fourth: 'with the fourth clave stroke',
  fifth: 'with the fifth clave stroke',
};

const clave = (stroke: StrokeReason['claveStroke']): string => (stroke === null ? '' : CLAVE_STROKES[stroke]);

function lead({ lead: ahead }: WhyFacts): string {
  if (!ahead) return '';
  const early = ahead.ticks === 240 ? 'an eighth' : ahead.ticks === 480 ? 'a beat' : `${ahead.ticks} ticks`;
  const where = ahead.bar === null ? '' : ahead.again ? ` in bar ${ahead.bar}, round the loop` : ` in bar ${ahead.bar}`;
  return `${early} before the chord is written${where}`;
}

const LINES: Readonly<Record<LineName, string>> = {
  guide: '',
  minor: 'It belongs to the line that moves inside the held minor chord.',
  major: 'It belongs to the line that moves inside the held major chord.',
  vamp: 'It belongs to the tune of the vamp.',
  riff: 'It belongs to the riff.',
};

const lineRemark = ({ line, outer }: WhyFacts): string => (line === null || outer === null ? '' : LINES[line]);

const DEVICES: Readonly<Record<Device, string>> = {
  'octave-up': 'The hand plays it an octave up.',
  'octaves-only': 'Octaves only is switched on, so nothing sounds inside.',
  'one-bar-neutral': 'The one-bar neutral pattern places it: both bars have the same rhythm.',
  'extra-note': 'The extra note puts it here, where it speaks for the right side.',
  'double-notes': 'Double notes put two sixteenths in place of one eighth.',
  'half-step-out': 'The figure has gone a half step outside for this cycle.',
};

function deviceRemark({ device, lift }: WhyFacts): string {
  if (device === null) return '';
  if (device !== 'octave-up' || lift % 12 === 0) return lift === 0 && device === 'octave-up' ? '' : DEVICES[device];
  return lift === 0 ? '' : `The hand plays it ${Math.abs(lift)} half steps ${lift > 0 ? 'up' : 'down'}.`;
}

const FALLBACKS: Readonly<Record<NonNullable<StrokeReason['fallback']>, string>> = {
  'power chord': 'The chord names no third, so nothing is put inside.',
  'no inner note fits': 'No inner note fits the hand here, so it sounds alone.',
  'fast changes': 'The chords change fast, so the hand keeps still inside.',
  'octaves only': 'Only the octaves sound here.',
};

const fallbackRemark = ({ fallback, device }: WhyFacts): string =>
  fallback === null || device === 'octaves-only' ? '' : FALLBACKS[fallback];

const editRemark = ({ edited }: WhyFacts): string => (edited ? 'It was changed by hand.' : '');

function firstPassRemark(facts: WhyFacts): string {
  if (!facts.firstPassOnly) return '';
  return isBass(facts) ? 'It sounds the first time only; afterwards the note before rings over it.' : 'It sounds the first time only.';
}
