import type { ChartNotice } from '../../music/chart/chart';
import type { Said } from '../language';
import type { NOTICES } from '../notice';
import { printedChord } from '../spoken';
import { compases, juntas, lado, mayuscula, PIEZAS } from './counting';
import { TEXTOS } from './music-texts';

const FRASES: Readonly<Record<ChartNotice['code'], (notice: ChartNotice) => string>> = {
  'odd section': (notice) =>
    `${mayuscula(parte(notice))} dura ${cuantos(notice)}: ahí la clave se voltea, y lo que sigue empieza por el otro lado.`,
  'section on the other side': (notice) => vuelvenPorElOtro([notice]),
  'half-side': (notice) =>
    `Un compás corto en ${parte(notice)} corre la clave medio lado desde aquí; el cifrado puede decir dónde empieza de nuevo.`,
  'outside the clave': (notice) =>
    `${mayuscula(TEXTOS.style(String(notice.detail.style ?? 'este estilo')))} no se basa en esta clave: ${parte(notice)} recibe un acompañamiento seguro.`,
  'label disagrees': (notice) =>
    `${mayuscula(parte(notice))} lleva escrito ${notice.detail.label ?? 'otra cosa'}, pero por la cuenta empieza en ${notice.detail.counted ?? 'la otra dirección'}.`,
  'style against meter': ({ detail, section }) =>
    `El estilo ${TEXTOS.style(String(detail.style ?? 'nombrado'))}${section === null ? '' : ` de ${section}`} se toca en ${detail.usual ?? 'otro compás'}, pero el cifrado está en ${detail.meter ?? 'este'}.`,
  'tempo outside style': ({ detail }) =>
    `El tempo está fuera de lo habitual en ${TEXTOS.style(String(detail.style ?? 'el estilo'))}${limites(detail)}.`,
  'figure bends': ({ bar, detail }) =>
    `La figura escrita se dobla en el compás ${(bar ?? 0) + 1}: ${printedChord(String(detail.chord ?? 'el acorde'))} no tiene ahí notas internas para ella, así que toca octavas.`,
  'edit out of place': ({ bar, detail }) =>
    `Un cambio a mano en el compás ${(bar ?? 0) + 1}, en ${PIEZAS.count(Number(detail.step ?? 0), false)}, ${CAMBIOS[String(detail.why)] ?? 'no encuentra ahora nada que cambiar'}; se conserva.`,
  'figure crossed': ({ bar, detail }) =>
    `Desde el compás ${(bar ?? 0) + 1} el piano está cruzado: su ritmo marca ${detail.states ?? 'la otra dirección'} y la clave va al revés.`,
  'device idle': ({ detail }) => RECURSOS[String(detail.device)] ?? 'Un recurso no encuentra aquí nada que hacer.',
  'unknown role': ({ section, detail }) =>
    `${section ?? 'Una sección'}, línea ${detail.line ?? '?'}: ningún papel se llama ${detail.role ?? 'así'}${detail.nearest === undefined ? '' : ` (¿${detail.nearest}?)`}. Suena como sección sin papel.`,
  'open odd vamp': (notice) =>
    `${mayuscula(parte(notice))} dura ${cuantos(notice)}, así que la clave se voltea en cada vuelta; ${mantenido(notice)}.`,
};

function vuelvenPorElOtro(notices: readonly ChartNotice[]): string {
  const partes = [...new Set(notices.map(parte))];
  const lados = [...new Set(notices.map(({ detail }) => detail.side))];
  const por = lados.length === 1 && lados[0] !== undefined ? lado(Number(lados[0])) : 'otro lado';
  return `${mayuscula(juntas(partes))} ${partes.length === 1 ? 'vuelve' : 'vuelven'} por el ${por}, y la figura va con ello; si te sorprende, cuenta los compases de antes.`;
}

function mantenido({ detail }: ChartNotice): string {
  const pases = Number(detail.passes ?? 2);
  const veces = pases === 1 ? 'una vez' : pases === 2 ? 'dos veces' : `${pases} veces`;
  return detail.closes === 'no'
    ? `tocado ${veces} no cierra la clave, y lo que sigue empieza por el otro lado`
    : `se mantiene ${veces} para que los lados cierren`;
}

const CAMBIOS: Readonly<Record<string, string>> = {
  rest: 'cae donde el piano calla',
  'nothing struck': 'no encuentra ahora ningún golpe ahí',
  'struck already': 'añadiría un golpe donde ya hay uno',
  'other side': 'es del otro lado de la clave, y su ciclo no tiene ahora ese compás',
  'outside the keys': 'pasa de la última tecla del instrumento, así que las notas de más se dejan fuera',
};

const RECURSOS: Readonly<Record<string, string>> = {
  'half-step-out':
    'Medio tono afuera y vuelta no encuentra ciclo que sacar: pide un riff, o dos ciclos o más sobre dos acordes como mucho.',
  'octaves-only': 'Solo octavas no cambia nada aquí: la figura no tiene nada dentro de sus octavas.',
  'extra-note': 'La nota añadida no encuentra libre el tiempo 3 del lado de 3.',
  'double-notes': 'Las notas dobles no encuentran ninguna corchea interna que partir.',
};

const parte = ({ section }: ChartNotice): string => section ?? 'el cifrado';
const cuantos = ({ detail }: ChartNotice): string =>
  detail.bars === undefined ? 'un número impar de compases' : compases(Number(detail.bars));
const limites = (detail: ChartNotice['detail']): string =>
  detail.from === undefined || detail.to === undefined ? '' : ` (de ${detail.from} a ${detail.to} blancas por minuto)`;

/** Notices in Spanish. */
export const NOTICIAS: Said<typeof NOTICES> = {
  sentence: (notice) => FRASES[notice.code](notice),
  sentences: (notices) => {
    const turned = notices.filter(({ code }) => code === 'section on the other side');
    return [...new Set(notices.map((notice) => (turned.includes(notice) ? vuelvenPorElOtro(turned) : FRASES[notice.code](notice))))];
  },
  putAway: 'Conozco este cifrado: guardar estos avisos',
  takeOut: (count) => `Mostrar lo que conviene saber (${count})`,
};
