import type { BANNERS } from '../banners';
import type { FIGURE_SCREEN } from '../figure-screen';
import type { HABITS_SCREEN } from '../habits-screen';
import type { Said } from '../language';
import type { LANGUAGE_SCREEN } from '../language-screen';
import type { OWN_FIGURE_SCREEN } from '../own-figure-screen';
import type { PAGE_NOTICES } from '../page-notices';
import type { TRANSPORT_NOTICES } from '../transport-notices';
import { razon } from './reasons';

const PASOS = {
  1: 'melodía en octavas, notas del acorde en los golpes que importan',
  2: 'acordes sobre la clave',
  3: 'un motivo repetido sale medio tono y vuelve',
} as const;

/** The line over the sounding card in Spanish. */
export const AVISOS_DE_EJERCICIO: Said<typeof BANNERS> = {
  crossed: 'Ejercicio: cruzado a propósito. El golpe en el 1 cae en el lado de 3.',
  example: 'Solo: melodía en octavas, luego acordes, luego un motivo repetido que sale y vuelve.',
  scaffold: 'Andamio para el solo: notas guía y clave; el resto es tuyo.',
  soloStep: (step) => `Solo, paso ${step} de 3: ${PASOS[step]}`,
  steps: PASOS,
  soloBars: (fromBar, toBar) => `compases ${fromBar + 1}–${toBar}`,
  soloHint: 'Toca un paso para repetirlo; uno después de otro.',
};

/** Settings of figure, hands and band in Spanish. */
export const FIGURA: Said<typeof FIGURE_SCREEN> = {
  cells: 'Células',
  levelCells: 'las del nivel',
  direction: 'Lo que marca la figura',
  scope:
    'Según una medida ajustada a ritmos que clasificaron músicos expertos (M. Vurkaç, UCI Machine Learning Repository 324, 2015). Dice la dirección, no la calidad.',
  stretch: 'Abertura de la mano',
  compass: 'Teclas del instrumento',
  hands: 'Manos e instrumento',
  band: 'Banda',
  style: 'Estilo',
  charted: 'el del cifrado',
  percussion: 'Percusión',
  feel: 'Fraseo',
  feels: { straight: 'parejo', measured: 'como toca un conjunto de son' },
  feelHint:
    'Medido en tres interpretaciones de son (IEMP Cuban Son and Salsa corpus, Poole, Tarsitani y Clayton, 2018–19). Nunca llega a las notas en papel.',
  percussions: { 'by style': 'según estilo y sección', none: 'ninguna' },
  exercise: 'Ejercicios',
  crossed: 'cruzado a propósito',
  crossedHint: 'Este es el lado equivocado: el golpe en el 1 cae en el lado de 3.',
  solo: 'Solo en tres pasos',
  solos: { none: 'sin solo', example: 'línea de ejemplo', scaffold: 'solo notas guía' },
  notices: 'Conviene saber',
  cue: 'Seguir',
  cueHint: 'Salir de la sección abierta al final de esta vuelta',
  leaving: 'se sale al final de esta vuelta',
  oneMore: 'una vuelta más',
  stretches: { 'less than an octave': 'menos de una octava', octave: 'octava', ninth: 'novena', tenth: 'décima' },
  keys: (keys) => `${keys} teclas`,
  styleFacts: (style) =>
    `${style.onClave ? `suele ir de ${style.from} a ${style.to} blancas por minuto` : 'no se basa en esta clave: un acompañamiento seguro'} · ${style.evidence}`,
};

/** Hints, pedals and view in Spanish. */
export const COSTUMBRES: Said<typeof HABITS_SCREEN> = {
  hints: {
    'press play': 'Pulsa Tocar, o la barra espaciadora: entra la banda.',
    'touch a note': 'Toca una nota: una frase dice por qué está ahí.',
    'exchange the sides': '¿La otra dirección? ⇄ cambia los lados.',
  },
  pressPlayByTouch: 'Pulsa Tocar: entra la banda.',
  hintSeen: 'Entendido',
  hintName: 'Una pista',
  pedals: 'Pedales',
  pedalsHint: 'Re Pág y Av Pág siempre pasan página. Aquí se enseña un pedal que manda otra tecla.',
  pedalActions: { forward: 'adelante, o la señal', back: 'atrás', 'play or stop': 'tocar o parar' },
  pedalTeach: 'Enseñar',
  pedalForget: 'Olvidar',
  pedalWaiting: 'Pisa el pedal…',
  pedalTaken: (key) => `${key} tiene aquí otro uso. Pon el pedal en otra tecla.`,
  pedalNone: 'todavía ninguno',
  space: 'Espacio',
  percussionRows: 'Filas de percusión',
  rows: { 'where there is room': 'donde quepan', always: 'siempre', never: 'nunca' },
  strip: 'Teclado de la mano',
  stripOn: 'visible',
  stripOff: 'oculto',
};

/** The choices of language and of note names in Spanish. */
export const IDIOMA: Said<typeof LANGUAGE_SCREEN> = {
  language: 'Idioma · Language',
  noteNames: 'Las notas se nombran',
  namings: { letters: 'C D E', 'do re mi': 'Do Re Mi' },
};

/** Changes by hand and the choice of percussion in Spanish. */
export const FIGURA_PROPIA: Said<typeof OWN_FIGURE_SCREEN> = {
  heardFrom: 'Lo que cambies aquí mientras suena la música se oye desde el próximo ciclo.',
  edits: {
    name: 'Cambios a mano',
    count: (changes) => (changes === 1 ? '1 cambio a mano' : `${changes} cambios a mano`),
    undo: 'Deshacer',
    redo: 'Rehacer',
    reset: 'Quitarlos todos',
  },
  percussion: { chosen: 'elegida', name: 'Lo que suena' },
  usualTempo: (tempo, unit) => `Su tempo habitual como meta: ${tempo} ${unit === 'half' ? 'blancas' : 'negras'}`,
};

/** What the page says once, in Spanish. */
export const AVISOS: Said<typeof PAGE_NOTICES> = {
  otherTabFresh: 'Este cifrado se cambió en otra pestaña.',
  otherTabParted: 'Este cifrado se cambió también en otra pestaña. El tuyo sigue aquí como cifrado aparte; no se pierde nada.',
  cleared:
    'Todo lo guardado en este dispositivo se borró en otra pestaña. Lo que tienes aquí sigue aquí, pero no se guarda nada más hasta que la página se cargue de nuevo.',
  late: 'Este dispositivo todavía no responde: puede que lo que ves no sea lo último que se guardó. Lo que hagas aquí se queda, y se guarda en cuanto responda.',
  newer:
    'Una versión más nueva de esta página escribió en este dispositivo. Esta lo deja como está y no guarda nada. Carga la página de nuevo para tener la nueva; si esto vuelve a salir, guarda una copia de lo que hiciste aquí.',
  saveBackup: 'Guardar una copia',
  loadAnew: 'Cargar la página de nuevo',
  showOther: 'Ver el otro',
  keepThis: 'Guardar también este',
  understood: 'De acuerdo',
  putAside: (count) =>
    count === 1
      ? 'Un registro guardado no se pudo leer. Se apartó sin tocarlo, y todo lo demás está aquí.'
      : `${count} registros guardados no se pudieron leer. Se apartaron sin tocarlos, y todo lo demás está aquí.`,
  trouble: (reason) =>
    `No se pudo convertir en música (${reason}). Se conserva la última música buena; por favor, deshaz el último ajuste.`,
  unwritten: (reason) =>
    `Lo que tocaste no se pudo escribir en el diario: ${razon(reason)}. Sigue aquí hasta que cierres la página, y se prueba otra vez después de la próxima pasada.`,
  saveJournal: 'Guardar el diario como archivo',
  unsaved: (reason) => `El archivo no se hizo (${reason}). Lo demás sigue aquí; inténtalo otra vez.`,
};

/** What is said above the transport, in Spanish. */
export const AVISOS_DEL_TRANSPORTE: Said<typeof TRANSPORT_NOTICES> = {
  caution:
    'Tocar montuno es trabajo pesado. Para si duele, sacude las manos, descansa; si sigue doliendo, consulta a un maestro o a un profesional de la salud.',
  cautionSeen: 'Entendido',
  blocked: (reason) =>
    `El sonido no pudo empezar: ${reason}. Toca la página o pulsa una tecla para seguir, o mira si esta página tiene permiso para sonar.`,
};
