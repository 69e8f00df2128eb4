import type { DRILLS } from '../drills';
import type { Said } from '../language';
import { printedNote } from '../spoken';

const limpias = (clean: number, of: number): string => `${clean} de ${of} limpias`;

/** The Drills place in Spanish. */
export const EJERCICIOS: Said<typeof DRILLS> = {
  intro: 'Cada uno toma el cifrado que está puesto. Tócalo en un teclado, márcalo, dalo con palmas o júzgalo de oído.',
  begin: 'Empezar',
  names: {
    'clap the clave': 'Palmear la clave',
    'montuno rhythm': 'El ritmo del montuno sobre el pulso',
    'hands apart': 'Manos por separado, luego juntas',
    'tempo ladder': 'Escalera de tempo',
    gap: 'El hueco',
    'twelve keys': 'Doce tonos',
    'fast changes': 'Cambios rápidos',
    'solo scaffold': 'Solo sobre notas guía',
    'which side': '¿Qué lado?',
    'at sight': 'Leer a primera vista',
    'lost and found': 'Perdido y hallado',
  },
  why: {
    'clap the clave': 'Son y rumba, desde los dos lados: quien la palmea contra el pulso ya tiene dónde colgar las manos.',
    'montuno rhythm': 'Primero el ritmo, en una nota o marcado: las notas esperan hasta que asiente.',
    'hands apart': 'Izquierda, derecha y las dos, tres pasadas limpias cada una: lo habitual para ver qué mano duda.',
    'tempo ladder': 'Un paso arriba tras tres limpias de cuatro, uno abajo tras dos que no, y a veces un arranque a la meta.',
    gap: 'La banda toca cuatro compases y calla: ¿sigues de acuerdo con ella cuando vuelve?',
    'twelve keys': 'La misma figura por todos los tonos; el que no salió limpio vuelve a pasar.',
    'fast changes': 'El ciclo de tu cifrado con más cambios, en vuelta: primero las posturas, luego el ritmo.',
    'solo scaffold': 'Solo notas guía y clave; la línea es tuya.',
    'which side': 'De oído: ¿el compás que oyes es el lado de 2 o el de 3? Lo que falles vuelve antes.',
    'at sight': 'Un cifrado que nunca viste, medio minuto para mirar, y a tocar. El número da el mismo cifrado a toda la clase.',
    'lost and found': 'La banda da una vuelta más o se come un compás, sin avisar. ¿Cuántos compases tardas en volver con la clave?',
  },
  barName: 'Ejercicio',
  end: 'Terminar el ejercicio',
  rate: { name: '¿Cómo fue esa pasada?', clean: 'Limpia', notClean: 'Todavía no' },
  passes: (clean, of) => (of === 0 ? 'Pulsa Tocar.' : limpias(clean, of)),
  done: 'Hecho. Déjalo reposar, o termina aquí el ejercicio.',
  clave: (direction, kind, clean) => `${kind} ${direction}: ${clean} de 3 limpias seguidas`,
  hand: (hand, clean) =>
    `${hand === 'both' ? 'las dos manos' : hand === 'left' ? 'mano izquierda' : 'mano derecha'}: ${clean} de 3 limpias seguidas`,
  ladder: (tempo, goal, clean, burst) =>
    burst
      ? `Un arranque a ${goal}, sin juzgar: solo para probarlo.`
      : `blanca = ${tempo} de ${goal}, ${clean} limpias de las últimas cuatro`,
  gapLine: (on, off) => `${on} compases con la banda, ${off === 1 ? '1 compás' : `${off} compases`} sin ella`,
  drifts: (behind) =>
    behind.length === 0
      ? ''
      : `Al volver la banda: ${behind
          .map((ms) => (ms === null ? 'juntos' : `${Math.round(Math.abs(ms))} ms ${ms > 0 ? 'atrás' : 'adelante'}`))
          .join(', después ')}.`,
  keyLine: (key, done) => (key === null ? 'Los doce tonos están hechos.' : `${printedNote(key)}, ${done} de 12 hechos`),
  order: { name: 'En qué orden', fourths: 'por cuartas', 'half steps': 'por semitonos', mixed: 'mezclados' },
  side: {
    hear: 'Oírlo',
    again: 'Oírlo otra vez',
    two: 'Empieza por el lado de 2',
    three: 'Empieza por el lado de 3',
    right: (side) => `Sí: era el lado de ${side}.`,
    wrong: (side) => `Era el lado de ${side}. Óyelo otra vez: ¿qué compás tiene un golpe en el 2?`,
    tally: (right, asked) => `${right} de ${asked} bien`,
    sounds: {
      clave: 'la clave sola',
      'montuno with clave': 'montuno con clave',
      montuno: 'montuno sin clave',
      percussion: 'percusión sola',
      'band without clave': 'la banda sin clave',
    },
    listen: 'Lo que oyes',
    leave: 'Terminar',
  },
  sight: {
    number: 'Número de cifrado',
    style: 'Estilo',
    difficulty: 'Dificultad',
    difficulties: { 1: 'un acorde por compás', 2: 'ii–V–I, más tonos', 3: 'dos acordes por compás', 4: 'dos secciones, cualquier tono' },
    look: 'Mostrar el cifrado',
    looking: (seconds) => `${seconds} segundos para mirar. Manos en el regazo.`,
    play: 'Tocar con la banda, sin su piano',
    answer: 'Mostrar una figura',
    another: 'Otro cifrado',
    title: (seed) => `Cifrado nuevo ${seed}`,
    kept: 'El cifrado va a tu estante cuando lo tocas.',
  },
  lost: {
    number: 'Número',
    play: 'Tocar, y no perder el sitio',
    reveal: '¿Qué hizo la banda?',
    again: (bar, bars) => `Desde el compás ${bar} tocó otra vez ${bars} compases.`,
    dropped: (bar, bars) => `En el compás ${bar} se comió ${bars === 1 ? 'un compás: todo se volteó' : `${bars} compases`}.`,
    nothing: 'Tocó la forma tal como está.',
    back: (bars) =>
      bars === null
        ? 'Después no volviste.'
        : bars === 0
          ? 'Ibas con ella enseguida.'
          : `Volviste después de ${bars === 1 ? 'un compás' : `${bars} compases`}.`,
    tally: (back, of) => `De vuelta en tres compases o menos: ${back} de ${of}.`,
    ask: '¿Volviste cada vez en tres compases o menos?',
    yes: 'Cada vez',
    no: 'No cada vez',
    write: 'Anótalo en el diario',
    written: 'Anotado en el diario.',
    counts: 'Los compases se cuentan como sonaron. ¿Cuántos pasaron hasta que volviste? Dos o tres es una buena noche.',
    another: 'Otra vez, distinto',
    tooShort: 'Este cifrado es demasiado corto: abre uno de dieciséis compases o más.',
  },
  caution: 'Para si duele, sacude las manos y descansa; si sigue doliendo, consulta a un maestro o a un profesional de la salud.',
};
