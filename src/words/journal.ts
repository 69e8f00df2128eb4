import type { CheckResult } from '../practice/due-dates';
import type { FindingFacts } from '../practice/finding';
import type { JournalColumn } from '../practice/journal-csv';

type Unit = 'half' | 'quarter';
const tempo = (halfNotes: number, unit: Unit): number => Math.round((unit === 'half' ? halfNotes : halfNotes * 2) * 10) / 10;
const sign = (unit: Unit): string => (unit === 'half' ? 'half' : 'quarter');
const percent = (share: number): string => `${Math.round(share * 100)} %`;
const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;
const bars = (from: number, to: number): string => (to - from === 1 ? `bar ${to}` : `bars ${from + 1}–${to}`);
const date = (at: number): string => new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long' }).format(at);

const SAID: Readonly<Record<FindingFacts['kind'] | 'nearly', string>> = {
  crossed: 'other side of the clave',
  displaced: 'pattern shifted',
  'other clave': 'the other clave',
  silent: 'nothing heard',
  stopped: 'stopped on the way',
  missed: 'strokes left out',
  extra: 'strokes in the rests',
  'late chords': 'chords changed late',
  'wrong notes': 'other notes',
  'wrong octave': 'another octave',
  rushing: 'ahead of the band',
  dragging: 'behind the band',
  swung: 'swung offbeats',
  'step off': 'one stroke stands out',
  uneven: 'uneven',
  offset: 'all early or all late',
  'hands apart': 'hands apart',
  'cut short': 'let go too soon',
  'inner loud': 'inner notes loud',
  nearly: 'nearly, by own ear',
};
const CHECKS: Readonly<Record<CheckResult, string>> = { clean: 'kept from last time', shaky: 'shaky at first', lost: 'to be found again' };
const COLUMNS: Readonly<Record<JournalColumn, string>> = {
  at: 'when (UTC)',
  kind: 'what',
  title: 'chart',
  bars: 'bars',
  tempo: 'half notes a minute',
  level: 'level',
  direction: 'direction',
  clean: 'clean',
  shareRight: 'share of strokes right',
  offsetMs: 'offset (ms)',
  spreadMs: 'spread (ms)',
  source: 'judged by',
  result: 'result',
  text: 'note',
};

/** What the Journal place says. Bars are given from 0 and shown from 1; tempi are half notes a minute. */
export const JOURNAL_WORDS = {
  onThisDevice: 'Kept on this device only.',
  loading: 'Opening the journal…',
  empty: 'Nothing here yet.',
  emptyHow: 'Play along with a loop, or rate a pass by your own ear: each whole pass is written down by itself.',
  emptyWay: 'Go and play',
  refused: (reason: string): string =>
    `This device does not keep the journal (${reason}). What you play is listed until the page is left; save it as a file.`,
  newer: (entries: number): string =>
    `${count(entries, 'entry was', 'entries were')} written by a newer version of this page and ${entries === 1 ? 'is' : 'are'} kept untouched.`,
  unread: (entries: number): string =>
    `${count(entries, 'entry', 'entries')} cannot be read and ${entries === 1 ? 'is' : 'are'} kept untouched.`,
  strain: 'Hands that hurt or tingle want a rest, not another pass. If it stays, ask a teacher or a clinician.',

  evening: 'What deserves the evening',
  noSets: 'Put the charts of a gig on a set list, with its date: their hand moves are counted here.',
  toSets: 'Set lists on the Chart place',
  chooseSet: 'Set list',
  choose: 'Choose a set list',
  setOption: (name: string, at: number | null): string => (at === null ? name : `${name}, ${date(at)}`),
  countMoves: (name: string): string => `Count the moves of ${name}`,
  counting: 'Counting hand moves…',
  emptySet: 'This set list holds no chart that can be arranged.',
  unreadCharts: (titles: readonly string[]): string => `Not counted, because of faults or because they are gone: ${titles.join(', ')}.`,
  sum: (barCount: number, moves: number, known: number, most: number): string => {
    const asked = `${count(barCount, 'bar uses', 'bars use')} ${count(moves, 'move', 'moves')} of the hand; you have ${known === moves ? 'all of them' : known}`;
    return most === 0 ? `${asked}.` : `${asked}; ${most === 1 ? 'this one covers' : `these ${most} cover`} most of the rest.`;
  },
  covered: (share: number): string => `${percent(share)} of the bars can be played with what you have.`,
  move: (from: string, to: string): string => `${from} → ${to}`,
  moveFacts: (times: number, charts: number, keys: number): string =>
    `${times === 1 ? 'once' : `${times} times`} in ${count(charts, 'chart', 'charts')}${keys > 1 ? `, from ${keys} places` : ''}`,
  unlocks: (barCount: number, share: number): string =>
    barCount === 0 ? `a step on the way; ${percent(share)}` : `opens ${count(barCount, 'bar', 'bars')}; then ${percent(share)}`,
  drill: 'Loop it',
  drillMove: (from: string, to: string): string => `Loop ${from} to ${to}`,
  have: 'I have it',
  haveMove: (from: string, to: string): string => `I have ${from} to ${to}`,
  theRest: (moves: number): string => `${count(moves, 'more move', 'more moves')}, in order`,
  theKnown: (moves: number): string => `${count(moves, 'move', 'moves')} you have`,
  pencil: 'Pencil lists of the whole set',
  pencilAway: 'Put the pencil lists away',
  pencilPrint: (pages: number): string => `Print ${count(pages, 'page', 'pages')}`,

  due: 'Due again',
  dueOff: (name: string, at: number): string => `Nothing is due until ${name}, ${date(at)}: the set is practised as a whole.`,
  dueNone: 'Nothing is due today.',
  dueHint: 'The first try of a new day shows what has stayed. It comes back after one day, then later and later while it stays.',
  dueLine: (from: number, to: number, days: number): string =>
    `${bars(from, to)} · ${days === 0 ? 'due today' : `due since ${count(days, 'day', 'days')}`}`,
  openLoop: (title: string, from: number, to: number): string => `Open ${title}, ${bars(from, to)}`,

  plan: 'A session with rests',
  planHint: 'Short blocks with rests between, and a break offered after three. Nothing interrupts a loop; everything can be passed over.',
  planNothing: 'It is laid out from what is due, from a dated set, or from what was played last.',
  rests: '30 seconds on, 30 off',
  start: 'Begin',
  end: 'End the session',
  sessionName: 'Session',
  block: (title: string, from: number, to: number, level: number | null): string =>
    level === null ? `${title}, ${bars(from, to)}` : `${title}, ${bars(from, to)}, level ${level}`,
  tomorrow: (titles: readonly string[]): string =>
    `Left for another day, because it is so close to something new today: ${titles.join('; ')}.`,
  part: {
    rest: 'Rest: hands off the keys.',
    break: 'Break: five minutes away from the piano.',
  },
  prompt: {
    play: 'Ready for the next one?',
    rest: 'A rest is due.',
    break: 'Three blocks done: a break of five minutes helps what you learned to stay.',
    over: 'That was the session.',
  },
  go: { play: 'Go on', rest: 'Rest now', break: 'Take the break', over: 'Done' },
  passOver: 'Pass over',

  lately: 'Played lately',
  loop: (title: string, from: number, to: number): string => `${title}, ${bars(from, to)}`,
  day: date,
  passes: (clean: number, passes: number): string => `${clean} of ${count(passes, 'pass', 'passes')} clean`,
  tempi: (slowest: number, fastest: number, unit: Unit): string =>
    slowest === fastest ? `${sign(unit)} = ${tempo(slowest, unit)}` : `${sign(unit)} = ${tempo(slowest, unit)}–${tempo(fastest, unit)}`,
  said: SAID,
  saidOther: (kind: string): string => kind,
  checks: CHECKS,
  drillDone: (drill: string, right: number, of: number): string => `${drill}: ${right} of ${of}`,
  earlier: 'Earlier days',
  remove: 'Take out',
  removeEntry: (what: string): string => `Take out: ${what}`,
  removed: (entries: number): string => `${count(entries, 'entry', 'entries')} taken out.`,
  undo: 'Bring back',

  reached: 'Tempo reached',
  reachedHint: 'The fastest clean pass on each chart.',
  notYet: 'no clean pass yet',

  timing: 'Timing',
  timingOf: (passes: number): string => `The last ${count(passes, 'judged pass', 'judged passes')} together.`,
  timingNone: 'Play along with a keyboard to see where your strokes fall.',

  notes: 'Notes',
  noteLabel: (title: string): string => `A note from player or teacher on ${title}`,
  keepNote: 'Write it down',

  csv: 'Save as a table (CSV)',
  print: 'Print the log',
  columns: COLUMNS,
  plain: (word: string): string => word,
} as const;
