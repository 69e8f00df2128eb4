/** Everything that can keep a score file from becoming a chart. */
export type ImportFaultCode =
  | 'too large'
  | 'not a score file'
  | 'broken archive'
  | 'no score in the archive'
  | 'cut off'
  | 'not well-formed'
  | 'document type'
  | 'too deep'
  | 'another root'
  | 'no parts'
  | 'no bars'
  | 'no chords'
  | 'meter'
  | 'not a chart'
  | 'took too long'
  | 'stopped';

/** Why a score file could not be read: where (from 1; null outside the text of a score), what stands there, what would have been right. */
export interface ImportFault {
  readonly code: ImportFaultCode;
  readonly line: number | null;
  readonly column: number | null;
  readonly text: string;
  readonly expected: string;
}

/** What a chart does not hold, and so was left out or changed. `bar` counts from 1; null where it concerns the whole file. */
export interface NotTaken {
  readonly code:
    | 'notes'
    | 'other parts'
    | 'unknown kind'
    | 'chord read as'
    | 'chord moved'
    | 'chord crowded out'
    | 'alternate chord'
    | 'second chord'
    | 'no root'
    | 'key change'
    | 'mode'
    | 'tempo'
    | 'tempo change'
    | 'bar length'
    | 'every bar short'
    | 'mark inside a repeat'
    | 'same mark'
    | 'jumps'
    | 'repeats'
    | 'open repeat'
    | 'transposed'
    | 'measure repeat'
    | 'form order';
  readonly bar: number | null;
  /** What the sentence needs: the names and numbers in it. */
  readonly detail: Readonly<Record<string, string | number>>;
}

const at = ({ line, column }: ImportFault): string => (line === null ? '' : `Line ${line}, column ${column ?? 1}: `);
const quote = (text: string): string => {
  const signs = [...text.replace(/\p{Cc}/gu, ' ').trim()];
  return signs.length === 0 ? '' : ` “${signs.length > 40 ? `${signs.slice(0, 39).join('')}…` : signs.join('')}”`;
};

const FAULTS: Readonly<Record<ImportFaultCode, (fault: ImportFault) => string>> = {
  'too large': ({ text, expected }) => `The file is too large${quote(text)}. Expected: ${expected}.`,
  'not a score file': ({ expected }) => `This is no score file. Expected: ${expected}.`,
  'broken archive': ({ text, expected }) => `The compressed file cannot be opened${quote(text)}. Expected: ${expected}.`,
  'no score in the archive': ({ expected }) => `The compressed file holds no score. Expected: ${expected}.`,
  'cut off': (fault) => `${at(fault)}the file ends too early${quote(fault.text)}. Expected: ${fault.expected}.`,
  'not well-formed': (fault) => `${at(fault)}the file is damaged${quote(fault.text)}. Expected: ${fault.expected}.`,
  'document type': (fault) =>
    `${at(fault)}the file declares things of its own${quote(fault.text)}, which is not safe to read. Expected: ${fault.expected}.`,
  'too deep': (fault) => `${at(fault)}the file is nested too deeply. Expected: ${fault.expected}.`,
  'another root': (fault) => `${at(fault)}this is XML of another kind${quote(fault.text)}. Expected: ${fault.expected}.`,
  'no parts': (fault) => `${at(fault)}the score has no part. Expected: ${fault.expected}.`,
  'no bars': (fault) => `${at(fault)}the score has no bar. Expected: ${fault.expected}.`,
  'no chords': (fault) => `${at(fault)}the score has no chord symbols. Expected: ${fault.expected}.`,
  meter: (fault) => `${at(fault)}a bar in${quote(fault.text)}. Expected: ${fault.expected}.`,
  'not a chart': (fault) => `The score cannot be written as a chart${quote(fault.text)}. Expected: ${fault.expected}.`,
  'took too long': ({ expected }) => `Reading the file took too long and was stopped. Expected: ${expected}.`,
  stopped: ({ text, expected }) => `Reading the file stopped${quote(text)}. Expected: ${expected}.`,
};

const bar = ({ bar: number }: NotTaken): string => (number === null ? '' : `Bar ${number}: `);
const say = ({ detail }: NotTaken, name: string): string => String(detail[name] ?? '');

const NOT_TAKEN: Readonly<Record<NotTaken['code'], (item: NotTaken) => string>> = {
  notes: (item) => `A chart holds chords: ${say(item, 'count') === '1' ? 'one note was' : `${say(item, 'count')} notes were`} left out.`,
  'other parts': (item) => `Only the part ${say(item, 'part')} was read; other parts: ${say(item, 'others')}.`,
  'unknown kind': (item) =>
    `${bar(item)}the chord ${say(item, 'chord')} is of a kind this reader does not know (${say(item, 'kind')}); the chord before it goes on.`,
  'chord read as': (item) => `${bar(item)}the chord ${say(item, 'typed')} was taken as ${say(item, 'chord')}.`,
  'chord moved': (item) => `${bar(item)}${say(item, 'chord')} stands between two beats; it was moved to the nearest beat that is free.`,
  'chord crowded out': (item) => `${bar(item)}there is no beat left for ${say(item, 'chord')}.`,
  'alternate chord': (item) => `${bar(item)}the alternative chord ${say(item, 'chord')} was left out.`,
  'second chord': (item) => `${bar(item)}of two chords at once only ${say(item, 'chord')} was taken.`,
  'no root': (item) => `${bar(item)}a chord written as a degree of the key was left out.`,
  'key change': (item) => `${bar(item)}the key changes to ${say(item, 'key')} inside a section; the chords are right, the key stays.`,
  mode: (item) => `${bar(item)}the mode ${say(item, 'mode')} was taken as ${say(item, 'key')}.`,
  tempo: (item) => `The tempo of ${say(item, 'quarters')} quarter notes a minute is outside what can be practised here and was left out.`,
  'tempo change': (item) => `${bar(item)}the tempo changes inside a section; the first tempo stays.`,
  'bar length': (item) => `${bar(item)}the bar is not as long as its meter says; it was taken as a whole bar.`,
  'every bar short': () => 'Every bar is in 2/4 and was taken as half a bar of 4/4: join them in pairs if the tune is counted in four.',
  'mark inside a repeat': (item) => `${bar(item)}the mark ${say(item, 'mark')} stands inside a repeat and begins no section.`,
  'same mark': (item) =>
    `${bar(item)}the mark ${say(item, 'mark')} is there already with other bars; this section is called ${say(item, 'name')}.`,
  jumps: () => 'The jumps (D.C., D.S., coda, fine) do not lead anywhere and were left out.',
  repeats: () => 'The repeats do not balance and were left out: every bar stands once.',
  'open repeat': (item) => `${bar(item)}the repeat that begins here has no end; it was left out.`,
  transposed: (item) =>
    `The part is written for a transposing instrument; the chords were moved ${say(item, 'semitones')} semitones to concert pitch.`,
  'measure repeat': (item) => `${bar(item)}a repeat sign for ${say(item, 'bars')} bars was left out; the chord before it goes on.`,
  'form order': () => 'Sections that come back the same were written once, with their order in the form line.',
};

/** Words around reading a score file into a chart. */
export const IMPORT_WORDS = {
  /** A fault as one sentence: where, what, what was expected. */
  fault: (fault: ImportFault): string =>
    FAULTS[fault.code](fault).replace(
      /(^|: )(\p{Ll})/u,
      (_, before: string, first: string) => before + (before === '' ? first.toUpperCase() : first),
    ),
  /** What was left out or changed, as one sentence. */
  notTaken: (item: NotTaken): string => NOT_TAKEN[item.code](item),
  expected: {
    scoreFile: 'a MusicXML file: .musicxml, .xml or .mxl',
    size: (megabytes: number): string => `a file of at most ${megabytes} MB, also when it is unpacked`,
    sizeFound: (megabytes: number): string => `${megabytes} MB`,
    archive: 'a compressed MusicXML file (.mxl) that is whole',
    container: 'a file META-INF/container.xml that names the score, or one file ending in .musicxml or .xml',
    rest: (element: string): string => `the rest of the file, down to the end of <${element}>`,
    wellFormed: 'well-formed XML',
    plainType: 'a MusicXML file without declarations of entities',
    depth: (levels: number): string => `at most ${levels} levels`,
    root: 'a score: <score-partwise> or <score-timewise>',
    part: 'at least one <part>',
    bar: 'at least one <measure>',
    chords: 'chord symbols over the bars (<harmony>)',
    meter: '4/4 or 2/2, with 2/4 for short bars, or 6/8 with 3/8',
    oneMeter: (meter: string): string => `${meter} throughout, as the score began`,
    lessWork: 'a score that is read within a few seconds',
    again: 'the file once more, or another one',
  },
} as const;
