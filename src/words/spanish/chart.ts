import type { CHART_EDITOR } from '../chart-editor';
import type { CHART_SCREEN } from '../chart-screen';
import type { Said } from '../language';
import { compases, lado } from './counting';
import { razon } from './reasons';

/** The Chart place in Spanish. */
export const CIFRADO: Said<typeof CHART_SCREEN> = {
  chartText: 'Texto del cifrado',
  newChart: 'Cifrado nuevo',
  saveChart: 'Guardar como archivo',
  saveMidi: 'Archivo MIDI',
  yourCharts: 'Tus cifrados',
  noCharts: 'Escribe sobre cualquier cifrado o empieza uno nuevo: se guarda aquí.',
  demoBook: 'Cuaderno de muestra',
  faults: (count) => (count === 1 ? '1 falta' : `${count} faltas`),
  noFaults: 'Sin faltas. Esto es lo que suena.',
  lastGood: 'Mientras haya faltas, sigue sonando la última música buena.',
  faultPlace: (line, column) => `Línea ${line}, columna ${column}`,
  expected: (expected) => `se esperaba ${expected}`,
  oddSection: 'impar: la clave se voltea',
  otherSide: (side) => `vuelve por el ${lado(side)}`,
  asItSounds: 'Como suena',
  onThisPlace: 'Más abajo',
  bar: (bar) => `compás ${bar + 1}`,
  section: (visit) => `${compases(visit.bars)}, desde el ${lado(visit.side)}`,
  keeping: (kind, refused) => {
    if (kind === 'kept') return 'Guardado en este dispositivo.';
    if (kind === 'waiting') return 'Guardando…';
    if (kind === 'newer')
      return 'Sin guardar: una versión más nueva de esta página escribió aquí. Guarda el cifrado como archivo para estar seguro.';
    if (kind === 'late') return 'Todavía sin guardar: este dispositivo no responde. Guarda el cifrado como archivo para estar seguro.';
    if (kind === 'cleared')
      return 'En esta pestaña ya no se guarda nada: todo se borró en otra. Guarda el cifrado como archivo si lo quieres.';
    return `No se guardó en este dispositivo: ${refused === null ? 'no dio razón' : razon(refused)}. Todo sigue aquí hasta que cierres la página; guarda el cifrado como archivo para estar seguro.`;
  },
  moreBars: (count) => `y ${count} compases más`,
};

/** The chart editor in Spanish. */
export const EDITOR: Said<typeof CHART_EDITOR> = {
  keysName: 'Signos para escribir',
  keys: {
    bar: 'barra de compás',
    same: 'otra vez el compás anterior',
    colon: 'dos puntos, para repeticiones',
    hold: 'mantener el acorde una negra',
    flat: 'bemol',
    sharp: 'sostenido',
    head: 'cabeza de sección',
    hits: 'cortes de la banda',
  },
  undo: 'Deshacer',
  redo: 'Rehacer',
  transposeName: 'Escribir en otro tono',
  key: 'Tono',
  halfStepLower: '−½, medio tono abajo',
  halfStepHigher: '+½, medio tono arriba',
  lower: '−½',
  higher: '+½',
  transposeAfterFaults: 'Cuando no haya faltas, el cifrado se podrá escribir en otro tono.',
  atCaretName: 'Donde escribes',
  couldBe: 'Podría ser',
  write: (text) => `Escribir ${text}`,
  nothingAtCaret:
    'Empieza un acorde y aquí estará lo que puede ser. Cortes: C7 {1 2& 4}. Un compás de silencio: stop. «Montuno 2-3» en tu papel: clave: 2-3.',
  asOnPaper:
    'Lo que un papel dice con palabras se escribe así: «montuno 2-3» es clave: 2-3 en renglón aparte, los cortes son C7 {1 2& 4}, una coda es [Coda] sobre sus compases, un compás de silencio es stop.',
};
