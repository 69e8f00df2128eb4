import type { Device, LineName, StrokeReason } from '../../vocabulary';
import type { Said } from '../language';
import type { WHY_WORDS } from '../why';
import type { WhyFacts, WhyNote } from '../why-facts';
import { juntas, lado, PIEZAS } from './counting';

const grado = (note: WhyNote): string => PIEZAS.degrees[note.degree];
const deGrado = (note: WhyNote): string => `la ${grado(note)}`;
const esBajo = ({ role }: WhyFacts): boolean => role === 'root' || role === 'fifth' || role === 'third';

function porQue(facts: WhyFacts): string {
  const remarks = [linea(facts), recurso(facts), reserva(facts), primeraVez(facts), aMano(facts)].filter((remark) => remark !== '');
  return [identidad(facts), lugarYPaso(facts), ...remarks].join(' ');
}

function identidad({ outer, inner, chord, role }: WhyFacts): string {
  const notes = juntas(inner.map(({ note }) => note));
  const degrees = juntas(inner.map(deGrado));
  if (!outer) return `${notes} son ${degrees} de ${chord}${role === 'inner' ? ', dentro de la octava' : ''}.`;
  if (role === 'approach') return `${outer.note} es una nota de aproximación: lleva por grado al golpe siguiente.`;
  if (role === 'root' && outer.degree !== '1') return `${outer.note} es el bajo escrito en ${chord}.`;
  return `${outer.note} es ${deGrado(outer)} de ${chord}${inner.length === 0 ? '' : `, con ${notes} dentro: ${degrees}`}.`;
}

function lugarYPaso(facts: WhyFacts): string {
  const { outer, move, chord } = facts;
  const where = lugar(facts);
  if (!move) return outer ? `Se toca ${where}.` : `Se tocan ${where}.`;
  const subject = outer ? '' : 'La línea ';
  const origin = `${move.from.note}, ${deGrado(move.from)} de ${move.fromChord}`;
  const said = (verb: string): string => (subject === '' ? verb.charAt(0).toUpperCase() + verb.slice(1) : subject + verb);
  if (move.semitones !== 0) return `${said(movido(move.semitones))} desde ${origin}, y se toca ${where}.`;
  if (move.fromChord === chord) return `${said('repite')} la nota anterior, y se toca ${where}.`;
  return `${said('se queda')} en ${origin}, y se toca ${where}.`;
}

const INTERVALOS = [
  '',
  'medio tono',
  'un tono',
  'una tercera menor',
  'una tercera mayor',
  'una cuarta',
  'un tritono',
  'una quinta',
  'una sexta menor',
  'una sexta mayor',
  'una séptima menor',
  'una séptima mayor',
  'una octava',
] as const;

function movido(semitones: number): string {
  const size = Math.abs(semitones);
  const interval = INTERVALOS[size] ?? `${size} semitonos`;
  if (size <= 2) return `${semitones > 0 ? 'sube' : 'baja'} ${interval}`;
  return `salta ${interval} ${semitones > 0 ? 'arriba' : 'abajo'}`;
}

const GOLPES: Readonly<Record<NonNullable<StrokeReason['claveStroke']>, string>> = {
  first: 'con el primer golpe de la clave',
  second: 'con el segundo golpe de la clave (bombo)',
  third: 'con el tercer golpe de la clave (ponche)',
  fourth: 'con el cuarto golpe de la clave',
  fifth: 'con el quinto golpe de la clave',
};

function lugar({ step, sixEight, side, claveStroke, lead }: WhyFacts): string {
  const parts = [`en ${PIEZAS.count(step, sixEight)} del ${lado(side)}`];
  if (claveStroke !== null) parts.push(GOLPES[claveStroke]);
  if (lead) {
    const early = lead.ticks === 240 ? 'una corchea' : lead.ticks === 480 ? 'un tiempo' : `${lead.ticks} partes de negra`;
    const bar = lead.bar === null ? '' : ` en el compás ${lead.bar}${lead.again ? ', al dar la vuelta' : ''}`;
    parts.push(`${early} antes de donde está escrito el acorde${bar}`);
  }
  return parts.join(', ');
}

const LINEAS: Readonly<Record<LineName, string>> = {
  guide: '',
  minor: 'Es parte de la línea que se mueve dentro del acorde menor que se mantiene.',
  major: 'Es parte de la línea que se mueve dentro del acorde mayor que se mantiene.',
  vamp: 'Es parte de la melodía del vamp.',
  riff: 'Es parte del riff.',
};

const linea = ({ line, outer }: WhyFacts): string => (line === null || outer === null ? '' : LINEAS[line]);

const RECURSOS: Readonly<Record<Device, string>> = {
  'octave-up': 'La mano lo toca una octava arriba.',
  'octaves-only': 'Está puesto «solo octavas», así que dentro no suena nada.',
  'one-bar-neutral': 'Lo coloca el patrón neutro de un compás: los dos compases tienen el mismo ritmo.',
  'extra-note': 'La nota añadida lo pone aquí, donde habla por el lado correcto.',
  'double-notes': 'Las notas dobles ponen dos semicorcheas en lugar de una corchea.',
  'half-step-out': 'La figura sale medio tono afuera durante este ciclo.',
};

function recurso({ device, lift }: WhyFacts): string {
  if (device === null) return '';
  if (device !== 'octave-up' || lift % 12 === 0) return lift === 0 && device === 'octave-up' ? '' : RECURSOS[device];
  return lift === 0 ? '' : `La mano lo toca ${Math.abs(lift)} semitonos ${lift > 0 ? 'arriba' : 'abajo'}.`;
}

const RESERVAS: Readonly<Record<NonNullable<StrokeReason['fallback']>, string>> = {
  'power chord': 'El acorde no nombra tercera, así que no se pone nada dentro.',
  'no inner note fits': 'Aquí no cabe en la mano ninguna nota interna, así que suena sola.',
  'fast changes': 'Los acordes cambian deprisa, así que la mano se queda quieta por dentro.',
  'octaves only': 'Aquí suenan solo las octavas.',
};

const reserva = ({ fallback, device }: WhyFacts): string => (fallback === null || device === 'octaves-only' ? '' : RESERVAS[fallback]);

const aMano = ({ edited }: WhyFacts): string => (edited ? 'Se cambió a mano.' : '');

function primeraVez(facts: WhyFacts): string {
  if (!facts.firstPassOnly) return '';
  return esBajo(facts) ? 'Suena solo la primera vez; después sigue sonando la nota anterior.' : 'Suena solo la primera vez.';
}

/** Why a stroke is what it is, in Spanish. */
export const PORQUES: Said<typeof WHY_WORDS> = { sentence: porQue };
