type Unit = 'half' | 'quarter';
type Expected = { readonly orNull?: true } & (
  | { readonly kind: 'text'; readonly least: number; readonly most: number }
  | { readonly kind: 'number'; readonly low: number; readonly high: number; readonly whole: boolean }
  | { readonly kind: 'one of'; readonly values: readonly (string | number)[] }
  | { readonly kind: 'list'; readonly most: number }
  | { readonly kind: 'date' | 'yes or no' | 'fields' }
);
type Fault =
  | { readonly code: 'too long'; readonly found: number }
  | { readonly code: 'no json' | 'another file' | 'newer version'; readonly found: string }
  | { readonly code: 'field'; readonly path: string; readonly expected: Expected; readonly found: string | null };

const tempo = (halfNotes: number, unit: Unit): string =>
  `${unit === 'half' ? 'half' : 'quarter'} = ${Math.round((unit === 'half' ? halfNotes : halfNotes * 2) * 10) / 10}`;
const percent = (share: number): string => `${Math.round(share * 100)} %`;
const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;
const bars = (from: number, to: number): string => (to - from === 1 ? `bar ${to}` : `bars ${from + 1}–${to}`);
const day = (date: string): string =>
  new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' }).format(
    Date.parse(`${date}T00:00:00Z`),
  );

const expected = (check: Expected): string => {
  const what = (): string => {
    switch (check.kind) {
      case 'text':
        return `a text of ${check.least === 0 ? 'at most' : `${check.least} to`} ${check.most} characters`;
      case 'number':
        return `a ${check.whole ? 'whole ' : ''}number from ${check.low} to ${check.high}`;
      case 'one of':
        return `one of ${check.values.join(', ')}`;
      case 'list':
        return `a list of at most ${check.most}`;
      case 'date':
        return 'a date such as 2026-11-28';
      case 'yes or no':
        return 'true or false';
      case 'fields':
        return 'a group of fields';
    }
  };
  return check.orNull ? `${what()}, or null` : what();
};

/** What is said about assignments and their results. Bars are given from 0 and shown from 1; tempi are half notes a minute. */
export const ASSIGNMENT_WORDS = {
  title: 'Teacher and student',
  hint: 'An assignment travels as a file or a link, its results as a file, by whatever way you send them. Nothing leaves this device by itself.',
  openFile: 'Open an assignment or results',
  dropHere: 'Drop the file here: an assignment is shown first, results join the table.',
  newer:
    'The assignments on this device were written by a newer version of this page. They are left as they are; reload the page to get that version.',
  fault: (file: string, fault: Fault): string => {
    switch (fault.code) {
      case 'too long':
        return `${file}: this file is far too large (${fault.found}). Expected an assignment or results of at most 2,000,000 characters.`;
      case 'no json':
        return `${file}: this is no file of this page: it begins with “${fault.found}”. Expected an assignment (.tarea.json) or results (.resultado.json).`;
      case 'another file':
        return `${file}: this holds neither an assignment nor results. Expected a file that was saved here, in the Journal.`;
      case 'newer version':
        return `${file}: this was saved by a newer version of this page (version ${fault.found}). Reload the page and open the file again.`;
      case 'field':
        return `${file}, ${fault.path}: ${fault.found === null ? 'missing' : `found “${fault.found}”`}, expected ${expected(fault.expected)}.`;
    }
  },
  theLink: 'The link',
  linkRefused: 'The assignment in this link cannot be opened.',
  moreFaults: (more: number): string => `and ${count(more, 'more fault', 'more faults')} of this kind.`,

  make: 'Set an assignment',
  makeHint: (title: string): string =>
    `${title} goes along as it lies on the desk: chart, key, direction, level, hands and tempo. The student sees it before anything is taken over.`,
  mend: 'The chart has faults. Mend them first; then it can be set.',
  which: 'Bars',
  whole: 'the whole form',
  bars,
  passes: 'Clean passes at the goal',
  goal: (unit: Unit): string => (unit === 'half' ? 'Goal (half notes a minute)' : 'Goal (quarter notes a minute)'),
  drill: 'A drill beside it',
  noDrill: 'none',
  seed: 'Its number, the same for the whole class',
  due: 'Until',
  note: 'Your words to the student',
  save: 'Save the assignment',
  makeLink: 'Make a link of it',
  madeAnew: 'The desk has changed: this link was made anew. One that you have copied or sent before asks for what was set then.',

  offer: (title: string): string => `An assignment: ${title}`,
  offerKnown: 'You have accepted this one before: it goes on from where it was.',
  offerFaults: (faults: number): string => `The chart has ${count(faults, 'fault', 'faults')}; it can be mended once it is on your shelf.`,
  accept: 'Accept it',
  leave: 'Leave it',
  facts: (title: string, key: string | null, direction: string, clave: string, level: number | 'by section'): string =>
    [
      title,
      ...(key === null ? [] : [`in ${key}`]),
      `${direction} ${clave}`,
      level === 'by section' ? 'level by section' : `level ${level}`,
    ].join(' · '),
  asks: (passes: number, goal: number, unit: Unit): string =>
    `${count(passes, 'clean pass', 'clean passes')} at ${tempo(goal, unit)} or faster`,
  asksDrill: (name: string, seed: number | null): string => (seed === null ? `Drill: ${name}` : `Drill: ${name}, number ${seed}`),
  until: (date: string): string => `until ${day(date)}`,
  over: (date: string): string => `was due ${day(date)}`,

  progress: (atGoal: number, wanted: number): string => `${atGoal} of ${wanted} clean at the goal`,
  sofar: (clean: number, passes: number): string => (passes === 0 ? 'no pass yet' : `${clean} of ${count(passes, 'pass', 'passes')} clean`),
  reached: (reached: number, unit: Unit): string => `reached ${tempo(reached, unit)}`,
  drills: (times: number): string => (times === 0 ? 'drill not done yet' : times === 1 ? 'drill done' : `drill done ${times} times`),
  done: 'Done',
  open: 'Open',
  openNamed: (title: string): string => `Open ${title} as it was set`,
  putAway: 'Put away',
  putAwayNamed: (title: string): string => `Put away the assignment ${title}`,
  wasPutAway: (title: string): string => `${title} was put away; its chart and its passes stay.`,
  undo: 'Bring back',
  handBack: 'Hand the results back',
  handBackHint:
    'The file holds your passes on these bars, what was heard, your own ratings, and what you write here. Send it to your teacher yourself.',
  who: 'Your name, if you like',
  words: 'A word to your teacher, if you like',
  saveResults: 'Save the results',
  saveResultsNamed: (title: string): string => `Save the results of ${title}`,

  results: 'Results that came back',
  columns: {
    who: 'Who',
    passes: 'Passes',
    clean: 'Clean',
    reached: 'Tempo reached',
    said: 'Said most',
    words: 'Their words',
  },
  nameless: 'no name',
  share: (share: number | null): string => (share === null ? '–' : percent(share)),
  strokes: (share: number): string => `${percent(share)} of strokes right`,
  rated: (rated: number): string => `${rated} by own ear`,
  reachedOf: (reached: number | null, goal: number, unit: Unit): string =>
    `${reached === null ? 'no clean pass' : tempo(reached, unit)}; goal ${tempo(goal, unit).replace(/^.* = /, '')}`,
  saidTimes: (what: string, times: number): string => (times === 1 ? what : `${what} (${times})`),
  nothingSaid: 'nothing',
  print: 'Print the table',
  clear: 'Clear the table',
} as const;
