import type { Key } from '../music/chart/chart';
import type { Clave } from '../vocabulary';
import { keyInWords } from './sheet';
import { printedKey } from './spoken';

const PLAY_ALONGS = {
  full: 'everyone',
  'without-piano': 'without piano',
  'piano-only': 'piano only',
} as const;

const KINDS = {
  sheet: 'Sheet (PDF)',
  midi: 'MIDI file',
  musicxml: 'MusicXML',
  mxl: 'MusicXML, compressed',
  wav: 'Play-along (WAV)',
  pack: 'The pack (zip)',
} as const;

/** A size as people read it: `1.8 MB`. */
const size = (bytes: number): string => {
  if (bytes < 1e6) return `${Math.max(1, Math.round(bytes / 1e3))} kB`;
  return bytes < 1e9 ? `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB` : `${(bytes / 1e9).toFixed(1)} GB`;
};

/** Words of the files to take along: the panel, and the contents page inside a pack. */
export const TAKE_ALONG_WORDS = {
  open: 'Take along',
  title: 'Take along',
  close: 'Close',
  about: 'Files of the whole form, as it stands on the desk. Nothing leaves this device.',
  kinds: KINDS,
  hints: {
    sheet: 'the same pages as the print',
    midi: 'for any sequencer or notation program',
    musicxml: 'for notation programs',
    mxl: 'the same, smaller',
    wav: 'to play along with anywhere',
    pack: 'sheet, MIDI, MusicXML and play-alongs in many keys, in one file',
  },
  save: 'Save',
  saveKind: (kind: keyof typeof KINDS): string => `Save ${KINDS[kind]}`,
  feel: 'Timing',
  feels: { straight: 'As written', measured: 'As a band plays it' },
  parts: 'Who plays',
  playAlongs: PLAY_ALONGS,
  form: 'How it goes',
  forms: { loop: 'Loop without a seam', once: 'Count-in, once through, rings out' },
  tempo: 'Tempo',
  tempoOf: (which: 'now' | 'goal', halfNotes: number): string => `${which === 'now' ? 'Now' : 'Goal'}, half = ${halfNotes}`,
  rate: 'Frames a second',
  rateOf: (rate: number): string => (rate === 44_100 ? '44.1 kHz' : '48 kHz'),
  keys: 'Keys',
  /** A key among twelve: `E♭`, `E♭m`. */
  key: printedKey,
  allKeys: 'All twelve',
  thisKey: 'This key only',
  holds: 'What it holds',
  estimate: (files: number, bytes: number): string => `${files} files, about ${size(bytes)}`,
  nothingChosen: 'Choose at least one key, one tempo and one kind of file.',
  working: (kind: keyof typeof KINDS, share: number): string => `Making: ${KINDS[kind]}, ${Math.floor(share * 100)} %`,
  preparing: 'Reading the recordings…',
  cancel: 'Cancel',
  done: (name: string, bytes: number): string => `Saved: ${name}, ${size(bytes)}.`,
  cancelled: 'Cancelled. Nothing was saved.',
  diskRefused: (reason: string): string =>
    `The file could not be written: ${reason}. Nothing was saved; make room or choose another folder, then try again.`,
  noSamples: (reason: string): string =>
    `The recordings could not be loaded (${reason}), so there is no play-along to save. Try again when there is a connection.`,
  notFetched: 'This part of the page could not be fetched. Close it and open it again when there is a connection.',
  noMusic: 'There is no music on the desk to take along.',
  failed: (reason: string): string => `The file could not be made: ${reason}. Nothing was saved.`,
  again: 'Try again',
  /** The contents page of a pack. */
  contents: {
    title: (title: string): string => `${title}: what is in this pack`,
    about: (clave: Clave, tempi: string): string => `Clave ${clave.direction} ${clave.kind}. Tempo, half notes a minute: ${tempi}.`,
    file: 'File',
    what: 'What it is',
    sheet: 'Lesson sheet',
    midi: (halfNotes: number): string => `MIDI file, half = ${halfNotes}`,
    musicxml: 'For notation programs',
    wav: (kind: keyof typeof PLAY_ALONGS, halfNotes: number): string => `Play-along, ${PLAY_ALONGS[kind]}, half = ${halfNotes}`,
    loop: 'The play-alongs end with the last bar, to the frame: set your player to repeat and they go round without a seam.',
    once: 'The play-alongs begin with two bars of clave and are played once.',
    caution:
      'Montunos are heavy work for hand and arm: rest between passes, and stop when it hurts; then see a teacher or a clinician. Keep headphones moderate.',
    key: (key: Key): string => keyInWords(key),
  },
} as const;
