import { TEMPO_RANGE } from '../../vocabulary';
import type { Said } from '../language';
import type { SCREEN } from '../screen';

const unit = (of: 'half' | 'quarter'): string => (of === 'half' ? 'blancas' : 'negras');

/** The first screen in Spanish. */
export const PANTALLA: Said<typeof SCREEN> = {
  name: 'Contratiempo',
  skip: 'Ir a la música',
  places: { practise: 'Práctica', chart: 'Cifrado', sheet: 'Hoja', drills: 'Ejercicios', journal: 'Diario' },
  placesName: 'Lugares',
  theme: { device: 'Como el dispositivo', paper: 'Papel', night: 'Noche' },
  view: { grid: 'Cuadrícula', staff: 'Pentagrama' },
  balance: 'Mezcla',
  fullScreen: 'Pantalla completa',
  leaveFullScreen: 'Salir de pantalla completa',
  play: 'Tocar',
  stop: 'Parar',
  transportName: 'Mandos',
  slower: 'Más lento',
  faster: 'Más rápido',
  goal: 'meta',
  tempoName: 'Tempo',
  tempo: (halfNotes, of) => Math.round((of === 'half' ? halfNotes : halfNotes * 2) * 10) / 10,
  tempoUnit: unit,
  tempoRange: (of) => {
    const factor = of === 'half' ? 1 : 2;
    return `El tempo es un número de ${TEMPO_RANGE.from * factor} a ${TEMPO_RANGE.to * factor} ${unit(of)} por minuto.`;
  },
  exchange: (direction) => `Dirección ${direction}. Cambiar de lado`,
  level: 'Nivel',
  levels: {
    'by section': 'según la sección',
    1: 'escueto',
    2: 'básico',
    3: 'línea móvil',
    4: 'notas de paso',
    5: 'cromático',
    6: 'riffs y bloques',
  },
  lessBusy: 'Menos movido',
  busier: 'Más movido',
  handsSound: 'Manos que suenan',
  hand: (hand, on) => `${hand === 'left' ? 'Izq.' : 'Der.'} ${on ? 'suena' : 'calla'}`,
  loop: 'Vuelta',
  loopOff: 'Sin vuelta',
  loopRun: (loop) => (loop ? `Vuelta ${loop.fromBar + 1}–${loop.toBar}` : 'Toda la forma'),
  barNumber: (bar) => String(bar + 1),
  barBefore: '1 compás antes',
  barAfter: '1 compás después',
  another: 'Otra figura',
  anotherHint: 'el mismo nivel con otra línea',
  looks: 'Vista',
  more: 'Más',
  less: 'Menos',
  quickLabel: 'Cuatro acordes, o una vuelta y un tono',
  quickExample: 'Gm7 C7 o ii-V-I in B♭',
  quickPlay: 'Tocar estos',
  noMusic: 'Todavía no hay música: el cifrado tiene faltas.',
  goToChart: 'Ir al cifrado',
  correct: (nearest) => `Escribir ${nearest}`,
  loading: 'Un momento…',
  failed: 'Esta parte de la página no se pudo mostrar.',
  reload: 'Cargar la página otra vez',
  shortcutsName: 'Teclas',
  words: 'Palabras',
  wordsShort: 'A–Z',
};
