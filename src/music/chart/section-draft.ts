import type { Meter } from '../../vocabulary';
import type { Section, WrittenBar } from './chart';
import type { FaultList, Place } from './faults';
import { MAX_TIMES } from './limits';
import { type Mark, readBar } from './read-bar';
import type { SectionHead } from './read-head';
import { type Barline, splitRow, trimmed } from './read-row';

interface Opening {
  start: Place | null;
  ending: { numbers: readonly number[]; place: Place } | null;
  readonly marks: Mark[];
  readonly place: Place;
}

type Draft<Value> = { -readonly [Field in keyof Value]: Value[Field] };

/** Marks that belong to the bar after them when they stand alone between two barlines; the others belong to the bar before. */
const AT_THE_START: ReadonlySet<Mark> = new Set(['segno', 'coda']);

/** A section while its rows are being read. */
export class SectionDraft {
  readonly #bars: Draft<WrittenBar>[] = [];
  /** What a barline or a mark says about the bar that comes next. */
  #opening: Opening | null = null;

  constructor(
    readonly head: SectionHead,
    readonly place: Place,
    private readonly meter: Meter,
    private readonly faults: FaultList,
  ) {}

  get barCount(): number {
    return this.#bars.length;
  }

  /** Reads one row of bars; `column` is that of the first character of `text`. */
  addRow(text: string, line: number, column: number): void {
    const pieces = splitRow(text, line, column);
    let left: Barline | null = null;
    pieces.forEach((piece, index) => {
      if (piece.kind === 'barline') {
        left = piece.barline;
        this.#addBarline(piece.barline);
        return;
      }
      const next = pieces[index + 1];
      const right = next?.kind === 'barline' ? next.barline : null;
      const cell = trimmed(piece.place);
      if (cell.text !== '') this.#addCell(cell);
      else if (isPlain(left) && isPlain(right)) {
        this.faults.add(
          'empty bar',
          { line, column: piece.place.column, text: piece.place.text },
          'a chord, %, N.C. or stop in every bar',
          '%',
        );
      }
    });
  }

  /** The finished section. */
  finish(): Section {
    const { start, ending, marks, place } = this.#opening ?? { start: null, ending: null, marks: [], place: this.place };
    if (start || ending) this.faults.add('empty bar', place, 'a bar after this barline');
    else if (marks.length > 0) this.faults.add('mark without bar', place, 'a bar after this mark');
    return { ...this.head, bars: this.#bars };
  }

  #addCell(cell: Place): void {
    const { body, marks } = readBar(cell, this.meter, this.faults);
    if (!body) {
      const last = this.#bars.at(-1);
      for (const mark of marks) {
        if (AT_THE_START.has(mark)) this.#open(cell).marks.push(mark);
        else if (last) last.marks = [...last.marks, mark];
        else this.faults.add('mark without bar', cell, `a bar before <${mark}>`);
      }
      return;
    }
    const opening = this.#opening;
    this.#opening = null;
    // Every field by name: bars spread together from parts are slow to read afterwards.
    const { content, source, hits, ticks, pickup } = body;
    this.#bars.push({
      content,
      source,
      hits,
      ticks,
      pickup,
      repeatStart: opening?.start != null,
      repeatEnd: null,
      ending: opening?.ending?.numbers ?? null,
      doubleBar: false,
      marks: opening ? [...opening.marks, ...body.marks] : body.marks,
      line: cell.line,
      column: cell.column,
    });
  }

  #addBarline(barline: Barline): void {
    const { place, end, double, start, ending } = barline;
    const last = this.#bars.at(-1);
    if (end) {
      const times = barline.times ?? 2;
      const sane = times >= 2 && times <= MAX_TIMES;
      if (!sane) this.faults.add('repeat times', place, `:| x2 to :| x${MAX_TIMES}: how often the passage is played in all`, ':| x2');
      if (!last || this.#opening?.start) this.faults.add('repeat not opened', place, 'a bar before this barline');
      else last.repeatEnd = sane ? times : 2;
    }
    if (double && last && !this.#opening?.start) last.doubleBar = true;
    if (start) {
      if (this.#opening?.start) this.faults.add('repeat in repeat', place, 'a bar between two |: signs');
      this.#open(place).start = place;
    }
    if (ending) this.#open(place).ending = { numbers: ending, place };
  }

  #open(place: Place): Opening {
    this.#opening ??= { start: null, ending: null, marks: [], place };
    return this.#opening;
  }
}

const isPlain = (barline: Barline | null): boolean =>
  barline !== null && !barline.end && !barline.start && !barline.double && barline.ending === null;
