import type { JOURNAL_WORDS } from '../journal';
import type { Said } from '../language';
import { razon } from './reasons';

type Unit = 'half' | 'quarter';
const tempo = (halfNotes: number, unit: Unit): number => Math.round((unit === 'half' ? halfNotes : halfNotes * 2) * 10) / 10;
const sign = (unit: Unit): string => (unit === 'half' ? 'blanca' : 'negra');
const percent = (share: number): string => `${Math.round(share * 100)} %`;
const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;
const bars = (from: number, to: number): string => (to - from === 1 ? `compás ${to}` : `compases ${from + 1}–${to}`);
const date = (at: number): string => new Intl.DateTimeFormat('es', { weekday: 'long', day: 'numeric', month: 'long' }).format(at);
const PLAIN: Readonly<Record<string, string>> = {
  pass: 'pasada',
  check: 'primer intento del día',
  note: 'nota',
  yes: 'sí',
  no: 'no',
  clean: 'limpio',
  shaky: 'inseguro',
  lost: 'perdido',
  midi: 'teclado MIDI',
  keys: 'teclas de la computadora',
  microphone: 'micrófono',
  'own rating': 'oído propio',
};

/** The Journal place in Spanish. */
export const DIARIO: Said<typeof JOURNAL_WORDS> = {
  onThisDevice: 'Se guarda solo en este dispositivo.',
  loading: 'Abriendo el diario…',
  empty: 'Aquí no hay nada todavía.',
  emptyHow: 'Toca con una vuelta puesta o califica una pasada con tu propio oído: cada pasada entera se anota sola.',
  emptyWay: 'Ir a tocar',
  refused: (reason) =>
    `Este dispositivo no guarda el diario (${razon(reason)}). Lo que toques se ve hasta que dejes la página; guárdalo como archivo.`,
  newer: (entries) =>
    entries === 1
      ? '1 entrada la escribió una versión más nueva de esta página y se conserva sin tocar.'
      : `${entries} entradas las escribió una versión más nueva de esta página y se conservan sin tocar.`,
  unread: (entries) =>
    entries === 1
      ? '1 entrada no se puede leer y se conserva sin tocar.'
      : `${entries} entradas no se pueden leer y se conservan sin tocar.`,
  strain: 'Unas manos que duelen u hormiguean piden descanso, no otra pasada. Si no se va, consulta a un maestro o a un médico.',

  evening: 'Lo que más rinde hoy',
  noSets: 'Pon los cifrados de un toque en un repertorio con su fecha: aquí se cuentan los movimientos de la mano.',
  toSets: 'Repertorios, en Cifrado',
  chooseSet: 'Repertorio',
  choose: 'Elige un repertorio',
  setOption: (name, at) => (at === null ? name : `${name}, ${date(at)}`),
  countMoves: (name) => `Contar los movimientos de ${name}`,
  counting: 'Contando movimientos…',
  emptySet: 'Este repertorio no tiene ningún cifrado que se pueda arreglar.',
  unreadCharts: (titles) => `Sin contar, por faltas o porque ya no están: ${titles.join('; ')}.`,
  sum: (barCount, moves, known, most) => {
    const asked = `${count(barCount, 'compás usa', 'compases usan')} ${count(moves, 'movimiento', 'movimientos')} de la mano; tienes ${known === moves ? 'todos' : known}`;
    return most === 0 ? `${asked}.` : `${asked}; ${most === 1 ? 'este cubre' : `estos ${most} cubren`} casi todo lo demás.`;
  },
  covered: (share) => `El ${percent(share)} de los compases se puede tocar con lo que tienes.`,
  move: (from, to) => `${from} → ${to}`,
  moveFacts: (times, charts, keys) =>
    `${times === 1 ? 'una vez' : `${times} veces`} en ${count(charts, 'cifrado', 'cifrados')}${keys > 1 ? `, desde ${keys} lugares` : ''}`,
  unlocks: (barCount, share) =>
    barCount === 0 ? `un paso en el camino; ${percent(share)}` : `abre ${count(barCount, 'compás', 'compases')}; luego ${percent(share)}`,
  drill: 'Repetir',
  drillMove: (from, to) => `Repetir: de ${from} a ${to}`,
  have: 'Ya lo tengo',
  haveMove: (from, to) => `Ya tengo de ${from} a ${to}`,
  theRest: (moves) => `${count(moves, 'movimiento más', 'movimientos más')}, en orden`,
  theKnown: (moves) => `${count(moves, 'movimiento', 'movimientos')} que ya tienes`,
  pencil: 'Listas a lápiz de todo el repertorio',
  pencilAway: 'Quitar las listas a lápiz',
  pencilPrint: (pages) => (pages === 1 ? 'Imprimir 1 página' : `Imprimir ${pages} páginas`),

  due: 'Toca otra vez',
  dueOff: (name, at) => `Nada vence hasta ${name}, ${date(at)}: el repertorio se estudia entero.`,
  dueNone: 'Hoy no toca nada.',
  dueHint: 'El primer intento de un día nuevo muestra lo que quedó. Vuelve al día siguiente, y cada vez más tarde mientras siga ahí.',
  dueLine: (from, to, days) => `${bars(from, to)} · ${days === 0 ? 'toca hoy' : `pendiente desde hace ${count(days, 'día', 'días')}`}`,
  openLoop: (title, from, to) => `Abrir ${title}, ${bars(from, to)}`,

  plan: 'Una sesión con descansos',
  planHint: 'Bloques cortos con descansos, y una pausa ofrecida después de tres. Nada interrumpe una vuelta; todo se puede saltar.',
  planNothing: 'Se arma con lo que toca otra vez, con un repertorio con fecha o con lo último que tocaste.',
  rests: '30 segundos sí, 30 no',
  start: 'Empezar',
  end: 'Terminar la sesión',
  sessionName: 'Sesión',
  block: (title, from, to, level) => (level === null ? `${title}, ${bars(from, to)}` : `${title}, ${bars(from, to)}, nivel ${level}`),
  tomorrow: (titles) => `Queda para otro día, por parecerse tanto a algo nuevo de hoy: ${titles.join(', ')}.`,
  part: {
    rest: 'Descanso: manos fuera del teclado.',
    break: 'Pausa: cinco minutos lejos del piano.',
  },
  prompt: {
    play: '¿Vamos con lo siguiente?',
    rest: 'Toca un descanso.',
    break: 'Van tres bloques: una pausa de cinco minutos ayuda a que se quede lo aprendido.',
    over: 'Esa fue la sesión.',
  },
  go: { play: 'Seguir', rest: 'Descansar', break: 'Tomar la pausa', over: 'Listo' },
  passOver: 'Saltar',

  lately: 'Lo último que tocaste',
  loop: (title, from, to) => `${title}, ${bars(from, to)}`,
  day: date,
  passes: (clean, passes) => `${clean} de ${count(passes, 'pasada limpia', 'pasadas limpias')}`,
  tempi: (slowest, fastest, unit) =>
    slowest === fastest ? `${sign(unit)} = ${tempo(slowest, unit)}` : `${sign(unit)} = ${tempo(slowest, unit)}–${tempo(fastest, unit)}`,
  said: {
    crossed: 'al otro lado de la clave',
    displaced: 'patrón corrido',
    'other clave': 'la otra clave',
    silent: 'no se oyó nada',
    stopped: 'se paró en el camino',
    missed: 'golpes que faltaron',
    extra: 'golpes en los silencios',
    'late chords': 'acordes tarde',
    'wrong notes': 'otras notas',
    'wrong octave': 'otra octava',
    rushing: 'delante de la banda',
    dragging: 'detrás de la banda',
    swung: 'contratiempos con swing',
    'step off': 'un golpe se sale',
    uneven: 'desigual',
    offset: 'todo antes o todo después',
    'hands apart': 'manos separadas',
    'cut short': 'soltadas antes de tiempo',
    'inner loud': 'notas internas fuertes',
    nearly: 'casi, a oído propio',
  },
  saidOther: (kind) => kind,
  checks: { clean: 'quedó de la última vez', shaky: 'inseguro al principio', lost: 'hay que encontrarlo otra vez' },
  drillDone: (drill, right, of) => `${drill}: ${right} de ${of}`,
  earlier: 'Días anteriores',
  remove: 'Sacar',
  removeEntry: (what) => `Sacar: ${what}`,
  removed: (entries) => (entries === 1 ? 'Se sacó 1 entrada.' : `Se sacaron ${entries} entradas.`),
  undo: 'Traer de vuelta',

  reached: 'Tempo alcanzado',
  reachedHint: 'La pasada limpia más rápida de cada cifrado.',
  notYet: 'todavía ninguna pasada limpia',

  timing: 'A tiempo',
  timingOf: (passes) => (passes === 1 ? 'La última pasada oída.' : `Las últimas ${passes} pasadas oídas, juntas.`),
  timingNone: 'Toca con un teclado para ver dónde caen tus golpes.',

  notes: 'Notas',
  noteLabel: (title) => `Una nota de quien toca o de su maestro sobre ${title}`,
  keepNote: 'Anotarla',

  csv: 'Guardar como tabla (CSV)',
  print: 'Imprimir el registro',
  columns: {
    at: 'cuándo (UTC)',
    kind: 'qué',
    title: 'cifrado',
    bars: 'compases',
    tempo: 'blancas por minuto',
    level: 'nivel',
    direction: 'dirección',
    clean: 'limpia',
    shareRight: 'parte de golpes bien',
    offsetMs: 'desfase (ms)',
    spreadMs: 'dispersión (ms)',
    source: 'oída por',
    result: 'resultado',
    text: 'nota',
  },
  plain: (word) => PLAIN[word] ?? word,
};
