import type { Alignment, AlignmentReason } from '../../music/clave/alignment';
import type { ALIGNMENT_WORDS } from '../alignment-sentence';
import type { FAULT_WORDS } from '../fault';
import type { Said } from '../language';
import { juntas, lado, mayuscula, PIEZAS } from './counting';
import { esperado } from './expected';
import { TEXTOS } from './music-texts';

const NOTAS: Readonly<Record<NonNullable<AlignmentReason['note']>, string>> = {
  'no strokes': 'No tiene golpes, así que no marca ninguna dirección.',
  'equal bars': 'Sus dos compases son iguales, así que no marca ninguna dirección.',
  'six-eight by name only': 'No es ninguno de los ritmos de 6/8 conocidos por nombre, y los demás no se juzgan.',
};

function direccion({ states, score, reason }: Alignment): string {
  if (reason.name !== null) {
    return states === 'neutral'
      ? `Es el patrón ${TEXTOS.pattern(reason.name)}, que no marca ninguna dirección.`
      : `Es el patrón ${TEXTOS.pattern(reason.name)} como se toca en ${states}.`;
  }
  if (reason.note) return NOTAS[reason.note];
  const why = losDosLados(reason);
  return states === 'neutral' ? `Se inclina a ${score > 0 ? '2-3' : '3-2'}, pero no con claridad: ${why}.` : `${mayuscula(why)}.`;
}

function losDosLados(reason: AlignmentReason): string {
  const sides = [
    { name: lado(2), sounds: reason.twoSideSounds, silent: reason.twoSideSilent },
    { name: lado(3), sounds: reason.threeSideSounds, silent: reason.threeSideSilent },
  ].filter(({ sounds, silent }) => sounds.length + silent.length > 0);
  return sides.map(({ name, sounds, silent }) => `en el ${name} ${hechos(sounds, silent)}`).join(' y ');
}

function hechos(sounds: readonly number[], silent: readonly number[]): string {
  const off = aContratiempo(silent) ? 'los tiempos' : cuentas(silent);
  if (silent.length === 0) return `suena en ${cuentas(sounds)}`;
  if (sounds.length === 0) return `calla en ${off}`;
  return `suena en ${cuentas(sounds)} pero no en ${off}`;
}

const cuentas = (steps: readonly number[]): string => juntas([...steps].sort((a, b) => a - b).map((step) => PIEZAS.count(step, false)));
const TIEMPOS = [0, 2, 4, 6];
const aContratiempo = (silent: readonly number[]): boolean =>
  silent.length === TIEMPOS.length && TIEMPOS.every((beat) => silent.includes(beat));

/** Why a rhythm states a direction, in Spanish. */
export const DIRECCIONES: Said<typeof ALIGNMENT_WORDS> = { sentence: direccion };

const MAS_LARGA = 40;

function recortado(text: string): string {
  const signs = [...text];
  return signs.length <= MAS_LARGA ? text : `${signs.slice(0, MAS_LARGA - 1).join('')}…`;
}

/** A fault in chart text in Spanish. */
export const FALTAS: Said<typeof FAULT_WORDS> = {
  sentence: ({ line, column, text, expected, nearest }) => {
    const quote = recortado(text.replace(/\p{Cc}/gu, ' ').trim());
    const found = quote === '' ? '' : `, «${quote}»`;
    return `Línea ${line}, columna ${column}${found}. Se esperaba: ${esperado(expected)}.${nearest === null ? '' : ` Lo más cercano: «${nearest}».`}`;
  },
};
