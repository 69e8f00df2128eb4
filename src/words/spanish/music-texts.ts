import type { Said } from '../language';
import { MUSIC_TEXTS } from '../music-texts';
import { esperado } from './expected';

type Traducciones = Readonly<Record<string, string>>;

const ENSENA: Traducciones = {
  'ii–V–I through a whole AABA: 7 falls to 3, and one label holds from beginning to end.':
    'ii–V–I por toda una forma AABA: la 7 baja a la 3, y la misma dirección vale de principio a fin.',
  'A minor chord held for two bars and more: the line 1–maj7–♭7–6 falls inside it.':
    'Un acorde menor que se mantiene dos compases o más: por dentro baja la línea 1–7 mayor–♭7–6.',
  'Two chords in every bar: the octave changes on the & of 2 and the & of 4.':
    'Dos acordes en cada compás: la octava cambia en el «y» del 2 y el «y» del 4.',
  'Minor iiø–V–i on rumba clave: ♭5 of the ii stays and becomes ♭9 of the V.':
    'iiø–V–i en menor sobre clave de rumba: la ♭5 del ii se queda y es la ♭9 del V.',
  'The commonest coro, I–IV–V–IV with two chords a bar, and a 6/9 tag with a tune on top.':
    'El coro más común, I–IV–V–IV con dos acordes por compás, y una coda de 6/9 con melodía arriba.',
  'A bridge of seven bars and a break of one: the coro comes in on the side where the tune began.':
    'Un puente de siete compases y un cierre de uno: el coro entra por el lado donde empezó la pieza.',
};

/** Pieces of what is said about evidence, the longest first; names of sources stay. */
const PRUEBAS: readonly (readonly [string, string])[] = [
  [
    'common practice, no source; meets the mambo bell 10 times a cycle as a mycongaplace.com forum post counts',
    'práctica común, sin fuente; coincide con la campana de mambo 10 veces por ciclo, según cuenta un mensaje del foro mycongaplace.com',
  ],
  [
    'its two opening quarters also in a mycongaplace.com forum post',
    'sus dos primeras negras, también en un mensaje del foro mycongaplace.com',
  ],
  [
    '(they disagree on the accents; which finger plays what is from memory)',
    '(no coinciden en los acentos; qué dedo toca qué es de memoria)',
  ],
  [
    'in words: one open tone on beat 4 of the 3-side; that a toe stroke takes the place of the second is assumed',
    'en palabras: un tono abierto en el 4 del lado de 3; que un golpe de dedos ocupa el lugar del segundo es supuesto',
  ],
  ['reconstructed from its row of hands', 'reconstruido de su línea de manos'],
  ['the soft touch is common practice, no source', 'el toque suave es práctica común, sin fuente'],
  ['the four beats fit straight and swung rhythms alike', 'los cuatro tiempos van con ritmos parejos y con swing'],
  ['tempo: two dance sites, not scholarly', 'tempo: dos sitios de baile, no académicos'],
  ['tempo: salsa-merengue.co.uk glossary', 'tempo: glosario de salsa-merengue.co.uk'],
  ['tempo from memory', 'tempo de memoria'],
  ['timbales pattern sheet', 'hoja de patrones de timbales'],
  ['common practice, no source', 'práctica común, sin fuente'],
  ['from memory', 'de memoria'],
  ['published:', 'publicado:'],
];

const PATRONES: Traducciones = {
  'son clave': 'clave de son',
  'rumba clave': 'clave de rumba',
  '6/8 son clave': 'clave de son en 6/8',
  '6/8 rumba clave': 'clave de rumba en 6/8',
  'bongo bell': 'campana de bongó',
  'cha-cha timbales': 'timbales de cha-cha-chá',
  'bass tumbao': 'tumbao del bajo',
  'steady eighths': 'corcheas seguidas',
  'mambo bell': 'campana de mambo',
  'cha-cha bell': 'campana de cha-cha-chá',
  'timbales low drum': 'tambor grave de los timbales',
  'cha-cha timbales, left hand': 'timbales de cha-cha-chá, mano izquierda',
  'bongo bell (campana)': 'campana de bongó',
  'conga tumbao, one drum': 'tumbao de una conga',
  'conga tumbao, one drum, with the clave': 'tumbao de una conga, con la clave',
  'conga tumbao, two drums': 'tumbao de dos congas',
  'conga tumbao, one drum, soft': 'tumbao de una conga, suave',
  'maracas on the beats': 'maracas en los tiempos',
  '6/8 bell': 'campana de 6/8',
  '6/8 low drum': 'tambor grave de 6/8',
};

const CELULAS: Traducciones = {
  standard: 'básica',
  'arpeggiated start': 'comienzo arpegiado',
  'pickup on 4': 'nota de paso en el 4',
  'after the shells': 'como la cáscara',
  'chords on the clave': 'acordes sobre la clave',
  sparse: 'escueta',
  'all offbeats': 'todo a contratiempo',
  'reduced, ending on 4': 'reducida, acaba en el 4',
  'as the tres plays it': 'como la toca el tres',
  'bombo and ponche': 'bombo y ponche',
  'bombo and & of 4': 'bombo y el «y» del 4',
};

const VEREDICTOS: Traducciones = { aligned: 'En clave', neutral: 'Neutro', crossed: 'Cruzado' };

const deUnaTabla =
  (tabla: Traducciones) =>
  (text: string): string =>
    tabla[text] ?? text;

/** The two names of a pair, whose own names may have a comma in them. */
function dosCelulas(names: string): string {
  const split = Object.keys(CELULAS)
    .filter((two) => names.startsWith(`${two}, `))
    .toSorted((a, b) => b.length - a.length)[0];
  const cell = deUnaTabla(CELULAS);
  return split === undefined ? names : `${cell(split)}, ${cell(names.slice(split.length + 2))}`;
}

const english = MUSIC_TEXTS.style;

/** What the tables of the music bring along, in Spanish. */
export const TEXTOS: Said<typeof MUSIC_TEXTS> = {
  expected: esperado,
  teaches: deUnaTabla(ENSENA),
  evidence: (text) => PRUEBAS.reduce((said, [of, by]) => said.replaceAll(of, by), text),
  // Styles have the same names; only jazz is called otherwise.
  style: (name) => (name === 'latin jazz' ? 'jazz latino' : english(name)),
  pattern: deUnaTabla(PATRONES),
  cells: dosCelulas,
  verdict: deUnaTabla(VEREDICTOS),
};
