import type { Said } from '../language';
import type { PAD_WORDS } from '../rhythm-pad';
import { printedNote } from '../spoken';
import { lado, PIEZAS } from './counting';

const PAPELES = {
  '.': 'silencio',
  x: 'golpe',
  o: 'octava',
  i: 'notas internas',
  c: 'acorde',
  s: 'nota sola',
  a: 'aproximación',
} as const;

/** The pad for rhythms and the editor of strokes in Spanish. */
export const RITMO_PROPIO: Said<typeof PAD_WORDS> = {
  title: 'Un ritmo propio',
  hint: 'Toca un paso, o ve con las flechas y escribe su letra: x golpe, o octava, i notas internas, c acorde, s nota sola, a aproximación, punto silencio.',
  hintByTouch: 'Toca un paso para cambiarlo, otra vez para el golpe siguiente.',
  text: 'Como texto, dos compases o uno',
  badText: (steps) =>
    `Hacen falta dos compases de ${steps / 2} pasos (o uno, que suena dos veces), x para un golpe (u o, i, c, s, a según su papel) y . para un silencio, como ${steps === 16 ? 'x.xx.x.x .x.xx.x.' : 'x.xx.x .x.x.x'}`,
  found: (fault) =>
    'steps' in fault ? `hay ${fault.steps} pasos` : `«${fault.letter}» en la columna ${fault.column} no significa nada aquí`,
  tap: 'Marcarlo con toques',
  tapHint: 'Al tempo puesto; el primer toque es el 1. La luz muestra dónde caería un toque.',
  tapsDone: (taps) => `Tomar estos toques (${taps})`,
  take: 'Tomar lo que suena ahora',
  clear: 'Borrar',
  exchange: 'Cambiar sus compases',
  use: 'Tocarlo por todo el cifrado',
  inUse: 'Ahora suena por todo el cifrado.',
  off: 'Volver a la figura del nivel',
  roles: PAPELES,
  marks: { '.': '', x: '●', o: 'oct', i: 'in', c: 'ac', s: 'una', a: 'ap' },
  side: lado,
  verdicts: { aligned: 'En clave.', neutral: 'Neutro.', crossed: 'Cruzado.' },
  other: 'Con sus compases cambiados',
  sixEight: 'En 6/8 los ritmos se conocen solo por nombre; los demás cuentan como neutros.',
  source:
    'La medida se ajustó a 7575 ritmos que clasificaron músicos expertos (M. Vurkaç, UCI Machine Learning Repository 324, 2015). Dice la dirección, no la calidad.',
  editor: 'Cambiar este golpe',
  leaveOut: 'Quitarlo',
  on: 'Poner aquí una octava',
  onInner: 'Poner aquí notas internas',
  up: 'Medio tono arriba',
  down: 'Medio tono abajo',
  stepUp: (name) => `Subir a ${printedNote(name)}`,
  stepDown: (name) => `Bajar a ${printedNote(name)}`,
  longer: 'Más largo',
  shorter: 'Más corto',
  shortest: 'Ya dura una corchea.',
  longest: 'Ya dura dos compases.',
  undo: 'Deshacer',
  redo: 'Rehacer',
  reset: 'Quitar todos los cambios',
  nothingMade: 'Todavía no se hizo ningún cambio.',
  nothingUndone: 'No se deshizo nada.',
  close: 'Cerrar',
  cell: (direction, step, role, clave, steps) => {
    const half = steps / 2;
    const side = step < half === (direction === '2-3') ? 2 : 3;
    return `${lado(side)}, ${PIEZAS.count(step % half, steps === 12)}, ${PAPELES[role]}${clave ? ', golpe de clave' : ''}`;
  },
  place: (bar, side, step, sixEight) => `compás ${bar + 1}, ${lado(side)}, en ${PIEZAS.count(step, sixEight)}`,
  changes: (count) => (count === 0 ? '' : count === 1 ? '1 cambio a mano' : `${count} cambios a mano`),
};
