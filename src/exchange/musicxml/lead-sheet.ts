import { failed, fullBarTicks, type Meter, ok, type Result, TICKS_PER_QUARTER } from '../../vocabulary';
import { IMPORT_WORDS, type ImportFault, type NotTaken } from '../../words/import-screen';
import { readHarmony } from './read-harmony';
import { type BarMarks, marksOf } from './read-marks';
import { child, childNumber, childrenNamed, childText, type XmlNode } from './read-xml';

/** One bar of a lead sheet as the file has it. */
export interface LeadBar extends BarMarks {
  /** Length by the meter, in ticks. */
  readonly ticks: number;
  readonly pickup: boolean;
  readonly chords: readonly { readonly tick: number; readonly symbol: string }[];
  /** Sharps or flats and mode of a key that begins here, or null. */
  readonly key: { readonly fifths: number; readonly mode: string } | null;
  /** Quarter notes a minute of a tempo that begins here, or null. */
  readonly quarters: number | null;
  /** True while a one-bar repeat sign stands in the bar. */
  readonly repeatsBar: boolean;
}

/** What a chart takes from one part of a score. */
export interface LeadSheet {
  readonly title: string;
  readonly meter: Meter;
  readonly bars: readonly LeadBar[];
  /** Semitones from the written to the sounding pitch. */
  readonly transpose: number;
  /** Values that this program, or another, left in the file for a chart: `clave`, `style`. */
  readonly fields: Readonly<Record<string, string>>;
  readonly notTaken: readonly NotTaken[];
}

const { expected } = IMPORT_WORDS;

/** Reads the part that has chord symbols (the most, and the first of several) out of a score. Every fault has its place. */
export function readLeadSheet(root: XmlNode): Result<LeadSheet, ImportFault> {
  const at = (code: ImportFault['code'], node: XmlNode, text: string, wanted: string): Result<never, ImportFault> =>
    failed({ code, line: node.line, column: node.column, text, expected: wanted });
  if (root.name !== 'score-partwise' && root.name !== 'score-timewise') return at('another root', root, `<${root.name}>`, expected.root);
  const parts = partsOf(root);
  if (parts.length === 0) return at('no parts', root, '', expected.part);
  if (parts.every(({ measures }) => measures.length === 0)) return at('no bars', root, '', expected.bar);
  const count = (measures: readonly XmlNode[]): number => measures.reduce((sum, one) => sum + childrenNamed(one, 'harmony').length, 0);
  const part = parts.reduce((best, one) => (count(one.measures) > count(best.measures) ? one : best));
  if (count(part.measures) === 0) return at('no chords', part.measures[0] ?? root, '', expected.chords);
  const read = new PartReader().read(part.measures);
  if (!read.ok) return read;
  const others = parts.filter((one) => one !== part).map(({ id }) => partName(root, id));
  const notes = parts.flatMap(({ measures }) => measures).reduce((sum, one) => sum + childrenNamed(one, 'note').filter(isNote).length, 0);
  const notTaken: NotTaken[] = [
    ...(others.length > 0
      ? [{ code: 'other parts' as const, bar: null, detail: { part: partName(root, part.id), others: others.join(', ') } }]
      : []),
    ...(notes > 0 ? [{ code: 'notes' as const, bar: null, detail: { count: notes } }] : []),
    ...read.value.notTaken,
  ];
  return ok({ ...read.value, title: titleOf(root), fields: fieldsOf(root), notTaken });
}

const isNote = (note: XmlNode): boolean => child(note, 'rest') === undefined;

/** Parts with their measures; a score written measure by measure is turned round. */
function partsOf(root: XmlNode): { readonly id: string; readonly measures: readonly XmlNode[] }[] {
  if (root.name === 'score-partwise')
    return childrenNamed(root, 'part').map((part) => ({ id: part.attributes.id ?? '', measures: childrenNamed(part, 'measure') }));
  const parts = new Map<string, XmlNode[]>();
  for (const measure of childrenNamed(root, 'measure'))
    for (const part of childrenNamed(measure, 'part')) {
      const id = part.attributes.id ?? '';
      parts.set(id, [...(parts.get(id) ?? []), { ...part, attributes: measure.attributes }]);
    }
  return [...parts].map(([id, measures]) => ({ id, measures }));
}

function partName(root: XmlNode, id: string): string {
  const entry = childrenNamed(child(root, 'part-list'), 'score-part').find(({ attributes }) => attributes.id === id);
  return childText(entry, 'part-name') || id;
}

function titleOf(root: XmlNode): string {
  const credit = childrenNamed(root, 'credit').find((one) => childText(one, 'credit-type') === 'title');
  return childText(child(root, 'work'), 'work-title') || childText(root, 'movement-title') || childText(credit, 'credit-words');
}

const fieldsOf = (root: XmlNode): Record<string, string> =>
  Object.fromEntries(
    childrenNamed(child(child(root, 'identification'), 'miscellaneous'), 'miscellaneous-field').map((field) => [
      field.attributes.name ?? '',
      field.text.trim(),
    ]),
  );

/** Bars that a chart can hold, in quarters: whole and half, by the chart's meter. */
const METERS: Readonly<Record<string, { readonly meter: Meter; readonly ticks: number }>> = {
  '4/4': { meter: '4/4', ticks: 1920 },
  '2/2': { meter: '4/4', ticks: 1920 },
  '2/4': { meter: '4/4', ticks: 960 },
  '1/2': { meter: '4/4', ticks: 960 },
  '6/8': { meter: '6/8', ticks: 1440 },
  '3/8': { meter: '6/8', ticks: 720 },
};

/** Reads the measures of one part one after another, keeping what holds until it is changed. */
class PartReader {
  #divisions = 1;
  #meter: Meter | null = null;
  #ticks = 1920;
  #transpose = 0;
  #repeatsBar = false;
  readonly #bars: LeadBar[] = [];
  readonly #notTaken: NotTaken[] = [];

  read(measures: readonly XmlNode[]): Result<Pick<LeadSheet, 'meter' | 'bars' | 'transpose' | 'notTaken'>, ImportFault> {
    for (const [index, measure] of measures.entries()) {
      const fault = this.#measure(measure, index);
      if (fault) return failed(fault);
    }
    const meter = this.#meter ?? '4/4';
    const full = fullBarTicks(meter);
    if (this.#bars.every(({ ticks, pickup }) => ticks < full && !pickup))
      this.#notTaken.push({ code: 'every bar short', bar: null, detail: {} });
    return ok({ meter, bars: this.#bars, transpose: this.#transpose, notTaken: this.#notTaken });
  }

  #measure(measure: XmlNode, index: number): ImportFault | null {
    const chords: { tick: number; symbol: string }[] = [];
    const number = index + 1;
    let key: LeadBar['key'] = null;
    let quarters: number | null = null;
    let now = 0;
    let longest = 0;
    for (const node of measure.children) {
      const length = ((childNumber(node, 'duration') ?? 0) * TICKS_PER_QUARTER) / this.#divisions;
      if (node.name === 'attributes') {
        const fault = this.#attributes(node, number);
        if (fault) return fault;
        key = keyOf(node) ?? key;
      } else if (node.name === 'note' && !child(node, 'chord') && !child(node, 'grace') && !child(node, 'cue')) now += length;
      else if (node.name === 'forward') now += length;
      else if (node.name === 'backup') now -= length;
      else if (node.name === 'harmony') this.#harmony(node, number, now, chords);
      if (node.name === 'direction' || node.name === 'sound') quarters ??= tempoOf(node);
      longest = Math.max(longest, now);
    }
    const pickup =
      index === 0 && (measure.attributes.implicit === 'yes' || measure.attributes.number === '0' || (longest > 0 && longest < this.#ticks));
    const ticks = pickup ? this.#ticks : this.#lengthOf(longest, number);
    this.#bars.push({
      ...marksOf(measure),
      ticks,
      pickup,
      chords: pickup && longest < this.#ticks ? chords.map((chord) => ({ ...chord, tick: chord.tick + this.#ticks - longest })) : chords,
      key,
      quarters,
      repeatsBar: this.#repeatsBar,
    });
    return null;
  }

  /** The length of a bar in a chart: by its meter, or half of it where the notes fill no more. */
  #lengthOf(filled: number, number: number): number {
    const full = fullBarTicks(this.#meter ?? '4/4');
    if (filled === 0 || filled === this.#ticks) return this.#ticks;
    if (filled === full / 2) return full / 2;
    this.#notTaken.push({ code: 'bar length', bar: number, detail: {} });
    return this.#ticks;
  }

  #attributes(node: XmlNode, number: number): ImportFault | null {
    this.#divisions = Math.max(1, childNumber(node, 'divisions') ?? this.#divisions);
    const transpose = child(node, 'transpose');
    if (transpose) this.#transpose = Math.round(childNumber(transpose, 'chromatic') ?? 0);
    for (const style of childrenNamed(node, 'measure-style')) {
      const repeat = child(style, 'measure-repeat');
      if (!repeat) continue;
      const bars = repeat.text.trim() === '' ? 1 : Number(repeat.text);
      this.#repeatsBar = repeat.attributes.type === 'start' && bars === 1;
      if (repeat.attributes.type === 'start' && bars !== 1) this.#notTaken.push({ code: 'measure repeat', bar: number, detail: { bars } });
    }
    const time = child(node, 'time');
    return time ? this.#time(time) : null;
  }

  #time(time: XmlNode): ImportFault | null {
    const text = child(time, 'senza-misura') ? 'senza misura' : timeText(time);
    const known = METERS[text];
    if (!known) return { code: 'meter', line: time.line, column: time.column, text, expected: expected.meter };
    if (this.#meter !== null && known.meter !== this.#meter)
      return { code: 'meter', line: time.line, column: time.column, text, expected: expected.oneMeter(this.#meter) };
    this.#meter = known.meter;
    this.#ticks = known.ticks;
    return null;
  }

  #harmony(node: XmlNode, number: number, now: number, chords: { tick: number; symbol: string }[]): void {
    const { symbol, notTaken } = readHarmony(node);
    if (node.attributes.type === 'alternate') {
      this.#notTaken.push({ code: 'alternate chord', bar: number, detail: { chord: symbol ?? '' } });
      return;
    }
    this.#notTaken.push(...notTaken.map((item) => ({ ...item, bar: number })));
    const offset = ((childNumber(node, 'offset') ?? 0) * TICKS_PER_QUARTER) / this.#divisions;
    if (symbol !== null) chords.push({ tick: Math.max(0, Math.round(now + offset)), symbol });
  }
}

/** `7/8`; several signatures side by side are joined by a plus. */
function timeText(time: XmlNode): string {
  const units = childrenNamed(time, 'beat-type').map(({ text }) => text.trim());
  return childrenNamed(time, 'beats')
    .map(({ text }, index) => `${text.trim()}/${units[index] ?? ''}`)
    .join(' + ');
}

function keyOf(node: XmlNode): LeadBar['key'] {
  const key = child(node, 'key');
  const fifths = childNumber(key, 'fifths');
  return fifths === null ? null : { fifths: Math.round(fifths), mode: childText(key, 'mode').toLowerCase() || 'major' };
}

/** How many quarter notes each beat unit lasts. */
const UNITS: Readonly<Record<string, number>> = { whole: 4, half: 2, quarter: 1, eighth: 0.5 };

function tempoOf(node: XmlNode): number | null {
  const sound = node.name === 'sound' ? node : child(node, 'sound');
  const said = Number(sound?.attributes.tempo ?? Number.NaN);
  if (Number.isFinite(said) && said > 0) return said;
  for (const type of childrenNamed(node, 'direction-type')) {
    const metronome = child(type, 'metronome');
    const unit = UNITS[childText(metronome, 'beat-unit')];
    const perMinute = Number.parseFloat(childText(metronome, 'per-minute'));
    if (unit !== undefined && perMinute > 0) return perMinute * unit * (child(metronome, 'beat-unit-dot') ? 1.5 : 1);
  }
  return null;
}
