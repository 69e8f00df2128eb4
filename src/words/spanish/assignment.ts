import type { ASSIGNMENT_WORDS } from '../assignment';
import type { Said } from '../language';

type Unit = 'half' | 'quarter';
const tempo = (halfNotes: number, unit: Unit): string =>
  `${unit === 'half' ? 'blanca' : 'negra'} = ${Math.round((unit === 'half' ? halfNotes : halfNotes * 2) * 10) / 10}`;
const percent = (share: number): string => `${Math.round(share * 100)} %`;
const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;
const day = (date: string): string =>
  new Intl.DateTimeFormat('es', { weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' }).format(
    Date.parse(`${date}T00:00:00Z`),
  );

type Expected = Extract<Parameters<(typeof ASSIGNMENT_WORDS)['fault']>[1], { code: 'field' }>['expected'];
const expected = (check: Expected): string => {
  const what = (): string => {
    switch (check.kind) {
      case 'text':
        return check.least === 0
          ? `un texto de ${check.most} caracteres como mucho`
          : `un texto de ${check.least} a ${check.most} caracteres`;
      case 'number':
        return `un número ${check.whole ? 'entero ' : ''}de ${check.low} a ${check.high}`;
      case 'one of':
        return `uno de estos: ${check.values.join(', ')}`;
      case 'list':
        return `una lista de ${check.most} como mucho`;
      case 'date':
        return 'una fecha como 2026-11-28';
      case 'yes or no':
        return 'true o false';
      case 'fields':
        return 'un grupo de campos';
    }
  };
  return check.orNull ? `${what()}, o null` : what();
};

/** Assignments and results in Spanish. */
export const TAREAS: Said<typeof ASSIGNMENT_WORDS> = {
  title: 'Maestro y alumno',
  hint: 'La tarea viaja como archivo o enlace, sus resultados como archivo, por donde quieras mandarlos. Nada sale solo de este dispositivo.',
  openFile: 'Abrir una tarea o resultados',
  dropHere: 'Suelta aquí el archivo: la tarea se muestra primero, los resultados van a la tabla.',
  newer:
    'Las tareas de este dispositivo las escribió una versión más nueva de esta página. Quedan como están; vuelve a cargar la página para tener esa versión.',
  fault: (file, fault) => {
    switch (fault.code) {
      case 'too long':
        return `${file}: este archivo es demasiado grande (${fault.found}). Se esperaba una tarea o resultados de 2 000 000 de caracteres como mucho.`;
      case 'no json':
        return `${file}: no es un archivo de esta página: empieza con «${fault.found}». Se esperaba una tarea (.tarea.json) o resultados (.resultado.json).`;
      case 'another file':
        return `${file}: aquí no hay ni tarea ni resultados. Se esperaba un archivo guardado aquí, en el Diario.`;
      case 'newer version':
        return `${file}: lo guardó una versión más nueva de esta página (versión ${fault.found}). Vuelve a cargar la página y abre el archivo otra vez.`;
      case 'field':
        return `${file}, ${fault.path}: ${fault.found === null ? 'falta' : `dice «${fault.found}»`} y se esperaba ${expected(fault.expected)}.`;
    }
  },
  theLink: 'El enlace',
  linkRefused: 'La tarea de este enlace no se puede abrir.',
  moreFaults: (more) => `y ${count(more, 'falta más', 'faltas más')} de este tipo.`,

  make: 'Poner una tarea',
  makeHint: (title) =>
    `${title} va tal como está en el atril: cifrado, tono, dirección, nivel, manos y tempo. El alumno lo ve antes de aceptar nada.`,
  mend: 'El cifrado tiene faltas. Corrígelas primero; después se puede poner.',
  which: 'Compases',
  whole: 'la forma entera',
  bars: (from, to) => (to - from === 1 ? `compás ${to}` : `compases ${from + 1}–${to}`),
  passes: 'Pasadas limpias a la meta',
  goal: (unit) => (unit === 'half' ? 'Meta (blancas por minuto)' : 'Meta (negras por minuto)'),
  drill: 'Un ejercicio al lado',
  noDrill: 'ninguno',
  seed: 'Su número, el mismo para toda la clase',
  due: 'Hasta',
  note: 'Tus palabras para el alumno',
  save: 'Guardar la tarea',
  makeLink: 'Hacer un enlace',
  madeAnew: 'Cambió lo que está en el atril: este enlace se hizo de nuevo. El que ya copiaste o enviaste pide lo de antes.',

  offer: (title) => `Una tarea: ${title}`,
  offerKnown: 'Esta ya la aceptaste: sigue desde donde estaba.',
  offerFaults: (faults) => `El cifrado tiene ${count(faults, 'falta', 'faltas')}; se puede corregir cuando esté en tu estante.`,
  accept: 'Aceptarla',
  leave: 'Dejarla',
  facts: (title, key, direction, clave, level) =>
    [
      title,
      ...(key === null ? [] : [`en ${key}`]),
      `${clave} ${direction}`,
      level === 'by section' ? 'nivel por sección' : `nivel ${level}`,
    ].join(' · '),
  asks: (passes, goal, unit) => `${count(passes, 'pasada limpia', 'pasadas limpias')} a ${tempo(goal, unit)} o más rápido`,
  asksDrill: (name, seed) => (seed === null ? `Ejercicio: ${name}` : `Ejercicio: ${name}, número ${seed}`),
  until: (date) => `hasta el ${day(date)}`,
  over: (date) => `era para el ${day(date)}`,

  progress: (atGoal, wanted) => `${atGoal} de ${wanted} limpias a la meta`,
  sofar: (clean, passes) => (passes === 0 ? 'todavía ninguna pasada' : `${clean} de ${count(passes, 'pasada limpia', 'pasadas limpias')}`),
  reached: (reached, unit) => `llegaste a ${tempo(reached, unit)}`,
  drills: (times) => (times === 0 ? 'falta el ejercicio' : times === 1 ? 'ejercicio hecho' : `ejercicio hecho ${times} veces`),
  done: 'Lista',
  open: 'Abrir',
  openNamed: (title) => `Abrir ${title} como la pusieron`,
  putAway: 'Retirar',
  putAwayNamed: (title) => `Retirar la tarea ${title}`,
  wasPutAway: (title) => `Se retiró ${title}; su cifrado y sus pasadas se quedan.`,
  undo: 'Traer de vuelta',
  handBack: 'Devolver los resultados',
  handBackHint:
    'El archivo lleva tus pasadas sobre estos compases, lo que se oyó, tus propias calificaciones y lo que escribas aquí. Mándaselo tú a tu maestro.',
  who: 'Tu nombre, si quieres',
  words: 'Unas palabras para tu maestro, si quieres',
  saveResults: 'Guardar los resultados',
  saveResultsNamed: (title) => `Guardar los resultados de ${title}`,

  results: 'Resultados que llegaron',
  columns: {
    who: 'Quién',
    passes: 'Pasadas',
    clean: 'Limpias',
    reached: 'Tempo alcanzado',
    said: 'Lo que más se dijo',
    words: 'Sus palabras',
  },
  nameless: 'sin nombre',
  share: (share) => (share === null ? '–' : percent(share)),
  strokes: (share) => `${percent(share)} de los golpes bien`,
  rated: (rated) => `${rated} a oído propio`,
  reachedOf: (reached, goal, unit) =>
    `${reached === null ? 'ninguna pasada limpia' : tempo(reached, unit)}; meta ${tempo(goal, unit).replace(/^.* = /, '')}`,
  saidTimes: (what, times) => (times === 1 ? what : `${what} (${times})`),
  nothingSaid: 'nada',
  print: 'Imprimir la tabla',
  clear: 'Vaciar la tabla',
};
