import type { ChartNotice } from '../music/chart/chart';
import { MUSIC_TEXTS } from './music-texts';
import { printedChord, SPOKEN } from './spoken';

type Sentences = Readonly<Record<ChartNotice['code'], (notice: ChartNotice) => string>>;

const SENTENCES: Sentences = {
  'odd section': (notice) =>
    `${place(notice)} lasts ${bars(notice)}: the clave turns over there, and what follows begins on the other side.`,
  'section on the other side': (notice) => backOnTheOtherSide([notice]),
  'half-side': (notice) =>
    `A short bar in ${lowerPlace(notice)} moves the clave by half a side from here on; the chart can say where it restarts.`,
  'outside the clave': (notice) => `${styleOf(notice)} is not built on this clave: ${lowerPlace(notice)} gets one safe accompaniment.`,
  'label disagrees': (notice) =>
    `${place(notice)} is marked ${notice.detail.label ?? 'otherwise'}, but by the count it begins in ${notice.detail.counted ?? 'the other direction'}.`,
  'style against meter': ({ detail, section }) =>
    `The style ${MUSIC_TEXTS.style(String(detail.style ?? 'named'))}${section === null ? '' : ` of ${section}`} is played in ${detail.usual ?? 'another meter'}, but the chart is in ${detail.meter ?? 'this one'}.`,
  'tempo outside style': ({ detail }) =>
    `The tempo lies outside what is usual for ${MUSIC_TEXTS.style(String(detail.style ?? 'the style'))}${range(detail)}.`,
  'figure bends': ({ bar, detail }) =>
    `The written figure bends in bar ${(bar ?? 0) + 1}: ${printedChord(String(detail.chord ?? 'the chord'))} has no inner notes for it there, so it plays octaves.`,
  'edit out of place': ({ bar, detail }) =>
    `A change made by hand in bar ${(bar ?? 0) + 1}, on ${SPOKEN.count(Number(detail.step ?? 0), false)}, ${EDIT_TROUBLE[String(detail.why)] ?? 'finds nothing to change there now'}; it is kept.`,
  'figure crossed': ({ bar, detail }) =>
    `From bar ${(bar ?? 0) + 1} the piano is crossed: its rhythm states ${detail.states ?? 'the other direction'}, and the clave goes the other way.`,
  'device idle': ({ detail }) => IDLE_DEVICES[String(detail.device)] ?? 'One device finds nothing to do here.',
  'unknown role': ({ section, detail }) =>
    `${section ?? 'A section'}, line ${detail.line ?? '?'}: no role is called ${detail.role ?? 'that'}${detail.nearest === undefined ? '' : ` (${detail.nearest}?)`}. It plays as a section without a role.`,
  'open odd vamp': (notice) => `${place(notice)} lasts ${bars(notice)}, so the clave turns over each time round; ${held(notice)}.`,
};

/** Sections that come back on the other side, said once for all of them. */
function backOnTheOtherSide(notices: readonly ChartNotice[]): string {
  const names = [...new Set(notices.map(place))];
  const sides = [...new Set(notices.map(({ detail }) => detail.side))];
  const side = sides.length === 1 && sides[0] !== undefined ? `the ${sides[0]}-side` : 'the other side';
  return `${SPOKEN.list(names)} ${names.length === 1 ? 'comes' : 'come'} back on ${side}, and the figure goes along; if that surprises you, count the bars before.`;
}

function held({ detail }: ChartNotice): string {
  const passes = Number(detail.passes ?? 2);
  const times = passes === 1 ? 'once' : passes === 2 ? 'twice' : `${passes} times`;
  return detail.closes === 'no'
    ? `held ${times} it does not close the clave, and what follows begins on the other side`
    : `it is held ${times} so that the sides close`;
}

const EDIT_TROUBLE: Readonly<Record<string, string>> = {
  rest: 'lies where the piano rests',
  'nothing struck': 'finds nothing struck there now',
  'struck already': 'would add a stroke where there is one already',
  'other side': 'belongs to the other side of the clave, and its cycle has no such bar now',
  'outside the keys': 'goes past the last key of the instrument, so notes beyond it are left out',
};

const IDLE_DEVICES: Readonly<Record<string, string>> = {
  'half-step-out':
    'Half step out and back finds no cycle to take outside: it needs a riff, or two cycles or more over no more than two chords.',
  'octaves-only': 'Octaves only changes nothing here: the figure has nothing inside its octaves.',
  'extra-note': 'The extra note finds no empty beat 3 on the 3-side.',
  'double-notes': 'Double notes find no inner eighth to split.',
};

const place = ({ section }: ChartNotice): string => section ?? 'The chart';
const lowerPlace = ({ section }: ChartNotice): string => section ?? 'the chart';
const bars = ({ detail }: ChartNotice): string => (detail.bars === 1 ? '1 bar' : `${detail.bars ?? 'an odd number of'} bars`);

function styleOf({ detail }: ChartNotice): string {
  const style = MUSIC_TEXTS.style(String(detail.style ?? 'this style'));
  return `${style.charAt(0).toUpperCase()}${style.slice(1)}`;
}

const range = (detail: ChartNotice['detail']): string =>
  detail.from === undefined || detail.to === undefined ? '' : ` (${detail.from} to ${detail.to} half notes a minute)`;

/** Notices about a chart or form. */
export const NOTICES = {
  /** One sentence. Example: "A lasts 7 bars: the clave turns over there, and what follows begins on the other side." */
  sentence: (notice: ChartNotice): string => SENTENCES[notice.code](notice),
  /** Every fact once, in the order of the form. */
  sentences: (notices: readonly ChartNotice[]): string[] => {
    const turned = notices.filter(({ code }) => code === 'section on the other side');
    const said = notices.map((notice) => (turned.includes(notice) ? backOnTheOtherSide(turned) : SENTENCES[notice.code](notice)));
    return [...new Set(said)];
  },
  /** Notices of a chart that the player has put away for good. */
  putAway: 'I know this chart: put these away',
  takeOut: (count: number): string => `Show what is worth knowing (${count})`,
} as const;
