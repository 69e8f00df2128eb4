import type { FindingFacts, LoopBars } from '../../practice/finding';
import type { FINDINGS } from '../findings';
import type { Said } from '../language';
import { printedChord } from '../spoken';
import { lado, PIEZAS } from './counting';

type Facts<Kind extends FindingFacts['kind']> = Extract<FindingFacts, { readonly kind: Kind }>;
type Cuenta = (step: number) => string;
type Frases = { readonly [Kind in FindingFacts['kind']]: (facts: Facts<Kind>, count: Cuenta) => string };

const bar = (index: number): string => `el compás ${index + 1}`;
const share = (some: number, of: number): string => (some === of ? `las ${of} veces` : `${some} de ${of} veces`);
const times = (number: number): string => (number === 1 ? 'una vez' : `${number} veces`);
const millis = (value: number): string => `${Math.round(Math.abs(value))} ms`;

const donde = (bars: LoopBars | null): string => (bars ? `En los compases ${bars.fromBar + 1}–${bars.toBar} t` : 'T');

const corrido = (steps: number): string => {
  const many = Math.abs(steps);
  const far =
    many === 1 ? 'una corchea' : many === 2 ? 'un tiempo' : many === 4 ? 'dos tiempos' : many === 6 ? 'tres tiempos' : `${many} corcheas`;
  return `${far} ${steps > 0 ? 'tarde' : 'antes'}`;
};

const FRASES: Frases = {
  silent: () => 'En esta pasada no llegó nada de tu instrumento. Mira que esté elegido y toca con la banda desde el conteo.',
  crossed: ({ fromStart, bar: at }) =>
    fromStart
      ? 'Tu patrón está bien, y cae del otro lado de la clave: empiézalo un compás después. Le pasa a cualquiera; la vuelta empieza donde empieza el lado.'
      : `Empezaste por el lado correcto; desde ${bar(at)} ibas por el otro. Escucha la clave en el compás anterior y vuelve a entrar con ella.`,
  displaced: ({ steps, fromStart, bar: at }) =>
    steps === 1 && fromStart
      ? 'Tu patrón está bien, y todo llega una corchea tarde. Si lo sentías a tiempo, tu bocina o tu instrumento es lento: mide el retraso. Si no, busca primero el 1 con el pie y deja entrar las manos después.'
      : `Tu patrón está bien, y cae ${corrido(steps)}${fromStart ? '' : ` desde ${bar(at)}`}. Busca primero el 1 con el pie y deja entrar las manos después.`,
  'other clave': ({ heard, asked }) =>
    `Eso fue clave de ${heard}, limpia; este cifrado pide clave de ${asked}. Se distinguen en un golpe: el último del lado de 3 está en ${asked === 'son' ? 'el 4' : 'el «y» del 4'}.`,
  stopped: ({ bar: at }) => `Tocaste hasta ${bar(at)}. Entra un compás antes y toca solo el empalme.`,
  missed: ({ count: number, of, step, bar: at }, count) =>
    step === null
      ? `Faltaron golpes, ${share(number, of)}, sobre todo en ${bar(at)}. Palmea una vez el ritmo de ese compás y tócalo después.`
      : `El golpe en ${count(step)} faltó ${times(number)}, sobre todo en ${bar(at)}. Dilo en voz alta al tocarlo.`,
  extra: ({ count: number, step, bar: at }, count) =>
    step === null
      ? `Sonaron ${number} golpes donde la figura calla, sobre todo en ${bar(at)}. Los silencios son parte del patrón: déjalos vacíos.`
      : `En ${count(step)} hay un silencio, y se golpeó ${times(number)}, sobre todo en ${bar(at)}. Deja ese momento al pie.`,
  'late chords': ({ count: number, of, step, bar: at }, count) =>
    `El acorde anterior seguía ahí en ${count(step)}, ${share(number, of)}, sobre todo en ${bar(at)}. El último golpe antes de la barra ya es del acorde siguiente.`,
  'wrong notes': ({ count: number, of, chord, bar: at }) =>
    chord === null
      ? `Sonaron otras notas, ${share(number, of)}, sobre todo en ${bar(at)}. Toca ese compás primero como acordes y después con su ritmo.`
      : `Sobre ${printedChord(chord)} sonaron otras notas ${times(number)}, sobre todo en ${bar(at)}. Busca esa postura sin el ritmo y devuélvesela después.`,
  'wrong octave': ({ count: number, of, bar: at }) =>
    `Las notas están bien, y en otra octava ${share(number, of)}, sobre todo en ${bar(at)}. Mira una vez adónde va la mano.`,
  rushing: ({ msPerCycle, bars }) =>
    `${donde(bars)}e adelantas a la banda unos ${millis(msPerCycle)} en cada ciclo de clave. Da a las notas largas todo su valor y apóyate en el bajo.`,
  dragging: ({ msPerCycle, bars }) =>
    `${donde(bars)}e quedas detrás de la banda unos ${millis(msPerCycle)} en cada ciclo de clave. ${bars ? 'Toca esos compases un' : 'Un'} poco más lento, donde la postura siguiente llegue a tiempo.`,
  swung: ({ shareOfStep }) =>
    `Tus contratiempos llegan tarde un ${Math.round(100 * shareOfStep)} % de corchea, como en el swing. Esta música es pareja: di «1 y 2 y» con valores iguales y toca sobre eso.`,
  'step off': ({ step, side, meanMs }, count) =>
    `Un golpe se sale: ${count(step)}${side === null ? '' : ` del ${lado(side)}`} llega ${millis(meanMs)} ${meanMs < 0 ? 'antes' : 'tarde'}, y los demás están en su sitio. Repite ese compás y escucha solo ese golpe.`,
  uneven: ({ spreadMs }) =>
    `Los golpes varían unos ${millis(spreadMs)} entre uno y otro, aunque están todos. Más lento y más suave durante cuatro vueltas se juntan.`,
  offset: ({ ms }) =>
    `Todo va ${millis(ms)} ${ms < 0 ? 'por delante' : 'por detrás'} de la banda, y parejo. ${ms < 0 ? 'Espera un poco y deja que el bajo llegue primero.' : 'Piensa el golpe un poco antes de tocarlo.'}`,
  'hands apart': ({ leftBehindMs }) =>
    `Tu mano ${leftBehindMs > 0 ? 'izquierda' : 'derecha'} llega ${millis(leftBehindMs)} después de la ${leftBehindMs > 0 ? 'derecha' : 'izquierda'}. Toca las dos juntas sobre un acorde, suave, hasta que suenen como una.`,
  'cut short': ({ count: number, of, step, bar: at }, count) =>
    `El golpe en ${count(step)} se soltó demasiado pronto, ${share(number, of)}, sobre todo en ${bar(at)}. Suena por encima del 1 callado que sigue: mantenlo.`,
  'inner loud': () =>
    'Las notas internas suenan tan fuerte como las octavas. Deja cantar las octavas y toca lo de adentro con la mitad del peso.',
};

/** What is said after a take, in Spanish. */
export const HALLAZGOS: Said<typeof FINDINGS> = {
  sentence: (facts: FindingFacts, sixEight = false): string =>
    (FRASES[facts.kind] as (facts: FindingFacts, count: Cuenta) => string)(facts, (step) => PIEZAS.count(step, sixEight)),
  nothing: 'Todo estuvo en su sitio y a tiempo. Prueba un poco más rápido, en otro tono o sin la clave.',
};
