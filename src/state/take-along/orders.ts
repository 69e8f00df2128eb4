import type { PackOrder } from '../../exchange/pack/pack-order';
import type { PartLevels } from '../../exchange/wav/play-along';
import type { Key } from '../../music/chart/chart';
import { transposeChart } from '../../music/chart/transpose-chart';
import { arrange, type Score } from '../../music/score';
import { feelNamed } from '../../performance/feel';
import { PARTS } from '../../performance/performance';
import { halfNotesPerMinute } from '../../vocabulary';
import type { DeskState } from '../desk-state';
import { optionsOf } from '../pipeline';
import type { Settings } from '../settings';
import type { Choices, FileKind, WhichTempo } from './choices';

/** What lies on the desk, as far as files are made of it. */
export type OnDesk = Pick<DeskState, 'music' | 'settings'>;

/** A tempo of the desk, in half notes a minute. */
export const tempoOf = (settings: Settings, which: WhichTempo) => halfNotesPerMinute(which === 'now' ? settings.tempo : settings.goalTempo);

/** The key that lies so many semitones above the desk's. */
export function keyAbove({ music, settings }: OnDesk, semitones: number): Key | null {
  return music && transposeChart(music.chart, settings.transpose + semitones).key;
}

/** What is to be made of a kind of file, or null when nothing is chosen or no music lies there. */
export function orderFor(desk: OnDesk, kind: FileKind, choices: Choices, date: string): PackOrder | null {
  const { settings } = desk;
  const pack = kind === 'pack';
  const which = pack ? choices.tempi : ([kind === 'wav' ? choices.tempo : 'now'] as const);
  const tempi = [...new Set(which.map((one) => tempoOf(settings, one)))];
  const kinds = pack ? choices.kinds : ([kind === 'mxl' ? 'musicxml' : kind] as const);
  const steps = pack ? choices.keys : [0];
  const playAlongs = pack ? choices.playAlongs : [choices.parts];
  if (!desk.music || tempi.length === 0 || kinds.length === 0 || steps.length === 0) return null;
  if (kinds.length === 1 && kinds[0] === 'wav' && playAlongs.length === 0) return null;
  return {
    scores: steps.map((semitones) => scoreOf(desk, semitones, settings.round !== 'once, then end', false)),
    sounding: kinds.includes('wav') ? steps.map((semitones) => scoreOf(desk, semitones, choices.form === 'loop', false)) : [],
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

/** The whole form, so many semitones above the desk's key, perhaps with the clave's sides exchanged. */
export function scoreOf({ music, settings }: OnDesk, semitones: number, closed: boolean, exchanged: boolean): Score {
  if (!music) throw new Error('there is no music on the desk');
  const direction = exchanged ? (settings.direction === '2-3' ? '3-2' : '2-3') : settings.direction;
  const transpose = settings.transpose + semitones;
  return arrange(music.chart, { ...optionsOf({ ...settings, direction, transpose }, closed, null) });
}

/** The levels of the desk's mix; a muted part is left out. */
function levelsOf({ balance }: Settings): PartLevels {
  return Object.fromEntries(PARTS.map((part) => [part, balance[part].muted ? 0 : balance[part].level])) as PartLevels;
}
