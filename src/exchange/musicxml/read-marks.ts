import type { WrittenBar } from '../../music/chart/chart';
import { child, childrenNamed, type XmlNode } from './read-xml';

/** A sign of the form, before it is known where jumps lead. A coda sign may be the place to leave or the place to come to. */
export type FormSign = 'segno' | 'coda sign' | 'coda' | 'to coda' | 'fine' | 'D.C.' | 'D.S.';

/** What barlines and directions of a bar say about the form. */
export interface BarMarks {
  readonly repeatStart: boolean;
  /** Times played in all, or null. */
  readonly repeatEnd: number | null;
  readonly endingStart: readonly number[] | null;
  readonly endingStop: boolean;
  readonly doubleBar: boolean;
  readonly section: string | null;
  readonly signs: readonly FormSign[];
  /** What a jump says it leads to. */
  readonly al: 'coda' | 'fine' | null;
}

/** The marks of a measure: its barlines, rehearsal marks, signs, words such as `D.S. al Coda`, and what `sound` says of them. */
export function marksOf(measure: XmlNode): BarMarks {
  const barlines = childrenNamed(measure, 'barline');
  const repeats = barlines.flatMap((line) => childrenNamed(line, 'repeat'));
  const endings = barlines.flatMap((line) => childrenNamed(line, 'ending'));
  const backward = repeats.find(({ attributes }) => attributes.direction === 'backward');
  const start = endings.find(({ attributes }) => attributes.type === 'start');
  const numbers = (start?.attributes.number ?? '')
    .split(/[^0-9]+/)
    .filter((text) => text !== '')
    .map(Number);
  const style = barlines.find(({ attributes }) => (attributes.location ?? 'right') === 'right');
  const directions = childrenNamed(measure, 'direction');
  const types = directions.flatMap((direction) => childrenNamed(direction, 'direction-type'));
  const sounds = [...childrenNamed(measure, 'sound'), ...directions.flatMap((direction) => childrenNamed(direction, 'sound'))];
  const words = types.flatMap((type) => childrenNamed(type, 'words')).map(({ text }) => text.trim());
  const rehearsal = types.map((type) => child(type, 'rehearsal')?.text.trim() ?? '').find((text) => text !== '');
  const times = Number(backward?.attributes.times ?? 2);
  return {
    repeatStart: repeats.some(({ attributes }) => attributes.direction === 'forward'),
    repeatEnd: backward ? (Number.isInteger(times) && times >= 2 ? times : 2) : null,
    endingStart: start ? numbers : null,
    endingStop: endings.some(({ attributes }) => attributes.type === 'stop' || attributes.type === 'discontinue'),
    doubleBar: /^(light-light|light-heavy)$/.test(style ? (child(style, 'bar-style')?.text.trim() ?? '') : ''),
    section: rehearsal ?? null,
    ...signsOf(types, sounds, words),
  };
}

const WORDS: readonly (readonly [RegExp, FormSign])[] = [
  [/^(d\.?\s?c\.?|da capo)(\s|$)/i, 'D.C.'],
  [/^(d\.?\s?s\.?|dal segno)(\s|$)/i, 'D.S.'],
  [/^to coda\b/i, 'to coda'],
  [/^fine\.?$/i, 'fine'],
  [/^coda\.?$/i, 'coda'],
];

function signsOf(types: readonly XmlNode[], sounds: readonly XmlNode[], words: readonly string[]): Pick<BarMarks, 'signs' | 'al'> {
  const signs = new Set<FormSign>();
  for (const text of words) for (const [pattern, sign] of WORDS) if (pattern.test(text)) signs.add(sign);
  for (const { attributes } of sounds) {
    if (attributes.segno !== undefined) signs.add('segno');
    if (attributes.coda !== undefined) signs.add('coda');
    if (attributes.tocoda !== undefined) signs.add('to coda');
    if (attributes.fine !== undefined) signs.add('fine');
    if (attributes.dacapo === 'yes') signs.add('D.C.');
    if (attributes.dalsegno !== undefined) signs.add('D.S.');
  }
  if (types.some((type) => child(type, 'segno'))) signs.add('segno');
  if (types.some((type) => child(type, 'coda')) && !signs.has('coda') && !signs.has('to coda')) signs.add('coda sign');
  const al = words.map((text) => /\bal\s+(coda|fine)/i.exec(text)?.[1]?.toLowerCase()).find((found) => found !== undefined);
  return { signs: [...signs], al: al === 'coda' || al === 'fine' ? al : null };
}

/** The marks of a chart for each bar: coda signs told apart by their order, jumps by what they say or by what the score has to lead to. */
export function chartMarks(bars: readonly BarMarks[]): WrittenBar['marks'][] {
  const all = bars.flatMap(({ signs }) => signs);
  const open = bars.flatMap(({ signs }, index) => (signs.includes('coda sign') ? [index] : []));
  const leaves = !all.includes('to coda') && open.length > (all.includes('coda') ? 0 : 1) ? open[0] : undefined;
  const hasCoda = all.includes('to coda') || leaves !== undefined;
  const hasFine = all.includes('fine');
  return bars.map(({ signs, al }, index) => {
    const marks: WrittenBar['marks'][number][] = [];
    if (signs.includes('segno')) marks.push('segno');
    if (signs.includes('coda') || (signs.includes('coda sign') && index !== leaves)) marks.push('coda');
    if (signs.includes('to coda') || index === leaves) marks.push('to coda');
    const jump = signs.includes('D.S.') ? 'D.S.' : signs.includes('D.C.') ? 'D.C.' : null;
    // A jump that says nothing plays on to its own bar: the end is there.
    const ends = jump !== null && al === null && !hasCoda && !hasFine;
    if (signs.includes('fine') || ends) marks.push('fine');
    if (jump) marks.push(`${jump} al ${al ?? (hasCoda ? 'coda' : 'fine')}`);
    return marks;
  });
}
