import type { Said } from '../language';
import type { LINK_WORDS } from '../link';
import type { UPDATE_WORDS } from '../update';
import { compases } from './counting';

const falta = (code: string, found: number): string => {
  switch (code) {
    case 'too long':
      return `Tiene ${found} caracteres; se esperaban como mucho 8192.`;
    case 'newer version':
      return `Es de la versión ${found} y se esperaba la 1: carga la página otra vez para tener una que lo lea.`;
    case 'too much inside':
      return `Desplegado pasaría de ${found} bytes, y ningún cifrado necesita tanto.`;
    case 'no lesson':
      return 'Lleva otra cosa; se esperaba un cifrado con sus ajustes.';
    default:
      return 'Le falta una parte o está cambiada: pídelo otra vez y cópialo entero.';
  }
};

/** Handing a chart over by link, in Spanish. */
export const ENLACE: Said<typeof LINK_WORDS> = {
  make: 'Enlace para un alumno',
  makeHint: 'Cifrado, tono, dirección, nivel y tempo van dentro del enlace. No pasa por ningún servidor nuestro.',
  note: 'Tus palabras para el alumno',
  address: 'El enlace',
  copy: 'Copiar el enlace',
  copied: 'Copiado.',
  notCopied: 'El portapapeles no lo aceptó: marca el enlace de arriba y cópialo.',
  code: 'El enlace en código QR, para leerlo de esta pantalla',
  noCode: 'Demasiado largo para un código que una cámara pueda leer desde aquí; el enlace sí sirve.',
  size: (length, most) => `${length} de ${most} caracteres.`,
  faulty: 'Cuando el cifrado no tenga faltas se podrá hacer un enlace.',
  close: 'Cerrar',
  name: 'Con este enlace viene un cifrado',
  untouched: 'Nada tuyo ha cambiado. Si lo tomas, será un cifrado más en tu estante.',
  title: 'Título',
  bars: compases,
  faults: (faults) => (faults === 1 ? 'una falta, marcada en el texto' : `${faults} faltas, marcadas en el texto`),
  key: 'Tono',
  direction: 'Dirección',
  level: 'Nivel',
  tempo: 'Tempo',
  tempoFacts: (tempo, goal) => `${tempo} blancas por minuto, meta ${goal}`,
  teacher: 'De tu maestro',
  take: 'Ponerlo en mi estante',
  leave: 'Dejarlo',
  refused: 'Este enlace no se puede abrir',
  fault: falta,
  noteLine: (line) => `; ${line}`,
};

/** What the page says when a new version of it waits, in Spanish. */
export const VERSION_NUEVA: Said<typeof UPDATE_WORDS> = { waits: 'Hay una versión nueva lista.', take: 'Usarla ya' };
