import type { PackPlan } from '../../exchange/pack/job';
import { bytesOf, packFiles } from '../../exchange/pack/pack-order';
import type { PartLevels } from '../../exchange/wav/play-along';
import type { Key } from '../../music/chart/chart';
import { transposeChart } from '../../music/chart/transpose-chart';
import { type ArrangeOptions, arrange, type Score } from '../../music/score';
import { feelNamed } from '../../performance/feel';
import { PARTS } from '../../performance/performance';
import { halfNotesPerMinute, oppositeDirection } from '../../vocabulary';
import type { DeskState } from '../desk-state';
import { optionsOf } from '../pipeline';
import type { Settings } from '../settings';
import type { Choices, FileKind, WhichTempo } from './choices';

/** What lies on the desk, as far as files are made of it. */
export type OnDesk = Pick<DeskState, 'music' | 'settings'>;

/** A tempo of the desk, in half notes a minute. */
const tempoOf = (settings: Settings, which: WhichTempo) => halfNotesPerMinute(which === 'now' ? settings.tempo : settings.goalTempo);

/** The key that lies so many semitones above the desk's. */
export function keyAbove({ music, settings }: OnDesk, semitones: number): Key | null {
  return music && transposeChart(music.chart, settings.transpose + semitones).key;
}

/** What is to be made of a kind of file, or null when nothing is chosen or no music lies there. Arranges nothing yet. */
export function planFor({ music, settings }: OnDesk, kind: FileKind, choices: Choices, date: string): PackPlan | null {
  const pack = kind === 'pack';
  const which = pack ? choices.tempi : ([kind === 'wav' ? choices.tempo : 'now'] as const);
  const tempi = [...new Set(which.map((one) => tempoOf(settings, one)))];
  const kinds = pack ? choices.kinds : ([kind === 'mxl' ? 'musicxml' : kind] as const);
  const steps = pack ? choices.keys : [0];
  const playAlongs = pack ? choices.playAlongs : [choices.parts];
  if (!music || tempi.length === 0 || kinds.length === 0 || steps.length === 0) return null;
  if (kinds.length === 1 && kinds[0] === 'wav' && playAlongs.length === 0) return null;
  const round = settings.round !== 'once, then end';
  return {
    chart: music.chart,
    keys: steps.map((semitones) => optionsIn(settings, semitones, round)),
    sounding: kinds.includes('wav') ? steps.map((semitones) => optionsIn(settings, semitones, choices.form === 'loop')) : [],
    tempi,
    kinds,
    playAlongs,
    form: choices.form,
    levels: levelsOf(settings),
    rate: choices.rate,
    feel: feelNamed(kind === 'wav' ? settings.feel : choices.feel),
    date,
  };
}

const optionsIn = (settings: Settings, semitones: number, closed: boolean): ArrangeOptions =>
  optionsOf({ ...settings, transpose: settings.transpose + semitones }, closed, null);

/** How many files a plan gives and how many bytes they take, from the music that lies on the desk: every key is as long. */
export function sizeOf({ chart: _, keys, sounding, ...plan }: PackPlan, whole: Score): { readonly files: number; readonly bytes: number } {
  const order = { ...plan, scores: keys.map(() => whole), sounding: sounding.map(() => whole) };
  const files = packFiles(order);
  // The contents page is one more.
  return { files: files.length + 1, bytes: files.reduce((sum, file) => sum + bytesOf(file, order), 0) };
}

/** The score of one key of a plan, and the same with the sides of the clave exchanged. */
export function sheetScores({ chart, keys }: PackPlan, key: number): readonly [score: Score, other: Score] {
  const options = keys[key] ?? {};
  const score = arrange(chart, options);
  return [score, arrange(chart, { ...options, direction: oppositeDirection(score.clave.direction), closed: true })];
}

/** The levels of the desk's mix; a muted part is left out. */
function levelsOf({ balance }: Settings): PartLevels {
  return Object.fromEntries(PARTS.map((part) => [part, balance[part].muted ? 0 : balance[part].level])) as PartLevels;
}
