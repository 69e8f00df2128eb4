import type { Colour, Device, Hands } from '../../vocabulary';
import type { CHANGES, ChangeFacts } from '../changes';
import type { Said } from '../language';
import { SCREEN } from '../screen';
import { mayuscula } from './counting';

const MANOS: Readonly<Record<Hands, string>> = {
  double: 'las dos manos, a una octava',
  wide: 'las dos manos, a dos octavas',
  tenths: 'décimas',
  contrary: 'movimiento contrario',
  tumbao: 'la izquierda toca el bajo',
  right: 'solo mano derecha',
  left: 'solo mano izquierda',
};

const RECURSOS: Readonly<Record<Device, string>> = {
  'octave-up': 'mano una octava arriba',
  'octaves-only': 'solo octavas',
  'one-bar-neutral': 'un compás neutro',
  'extra-note': 'nota añadida',
  'double-notes': 'notas dobles',
  'half-step-out': 'medio tono afuera y vuelta',
};

const COLORES: Readonly<Record<Colour, string>> = { plain: 'sencillo', jazz: 'jazz' };

const FIJOS: Readonly<Record<string, string>> = {
  seed: 'Otra figura',
  style: 'El estilo',
  edits: 'Tu cambio',
  solo: 'La parte de solo',
  crossed: 'El ejercicio',
  feel: 'El fraseo',
  percussion: 'La percusión',
  cells: 'La figura',
  ownFigure: 'La figura',
  stretch: 'La figura',
  compass: 'La figura',
};

function cambio(facts: ChangeFacts): string {
  switch (facts.thing) {
    case 'direction':
      return facts.direction;
    case 'kind':
      return `Clave de ${facts.kind}`;
    case 'level':
      return facts.level === 'by section' ? 'Niveles según la sección' : `Nivel ${facts.level}, ${SCREEN.levels[facts.level]},`;
    case 'hands':
      return `${mayuscula(MANOS[facts.hands])},`;
    case 'devices':
      return facts.devices.length === 0 ? 'Sin recursos' : `${mayuscula(facts.devices.map((device) => RECURSOS[device]).join(', '))},`;
    case 'colour':
      return `Color ${COLORES[facts.colour]}`;
    case 'transpose':
      return facts.key;
    case 'loop':
      return facts.loop ? `${SCREEN.loopRun(facts.loop)},` : 'Toda la forma';
    case 'round':
      return facts.round === 'round and round' ? 'Vueltas sin fin' : 'Una vez, y final,';
    case 'pulse':
      return facts.pulse === 'halves' ? 'Pulso en 1 y 3' : 'Pulso en los cuatro tiempos';
    default:
      return FIJOS[facts.thing] ?? 'El cifrado cambiado';
  }
}

/** Names of what can be set, and the sentences about changes, in Spanish. */
export const CAMBIOS: Said<typeof CHANGES> = {
  hands: MANOS,
  devices: RECURSOS,
  deviceHints: {
    'octave-up': 'se oye por encima de la banda',
    'octaves-only': 'la línea sin notas internas',
    'one-bar-neutral': 'seguro hasta que se oiga la campana',
    'extra-note': 'llena el tiempo 3 del lado de 3',
    'double-notes': 'dos semicorcheas, una vez cada dos ciclos',
    'half-step-out': 'un ciclo de cada cuatro se va afuera',
  },
  colours: COLORES,
  sentence: (facts, fromBar) => `${cambio(facts)} ${fromBar === null ? 'ahora' : `desde el compás ${fromBar + 1}`}`,
};
