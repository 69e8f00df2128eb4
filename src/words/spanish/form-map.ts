import type { FORM_WORDS } from '../form-map';
import type { Said } from '../language';
import { compases, lado } from './counting';

/** What stands around the sounding card in Spanish. */
export const FORMA: Said<typeof FORM_WORDS> = {
  alsoPlaying: (names) => `y ${names.join(', ')}`,
  allPlaying: (names) => names.join(', '),
  shapes: { accent: 'acento', open: 'abierto', slap: 'tapado o sordo', plain: 'normal' },
  loopFrom: 'La vuelta empieza en',
  loopTo: 'La vuelta termina tras',
  close: 'Cerrar',
  why: 'Por qué este golpe',
  mapName: 'La forma',
  card: (bars, chords) => `${bars}: ${chords}`,
  count: compases,
  onCue: 'a la señal',
  level: (low, high) => (low === high ? `nivel ${low}` : `niveles ${low} a ${high}`),
  inBars: (bars) => (bars < 1 ? 'ahora' : `en ${compases(bars)}`),
  turn: (turn) =>
    turn.kind === 'restart'
      ? `la clave empieza de nuevo, desde el ${lado(turn.side)}`
      : turn.kind === 'across'
        ? 'medio lado voltea la cuenta'
        : `${turn.section}, desde el ${lado(turn.side)}`,
  nextName: (bars) => `Tarjeta siguiente, ${bars}`,
};
