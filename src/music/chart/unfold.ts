import { assert, type Direction, fullBarTicks, oppositeDirection, type Side, stepsInCycle, TICKS_PER_STEP } from '../../vocabulary';
import type { Chart, Form, Section, SectionRole, SectionVisit, SoundingBar, WrittenChord } from './chart';
import { SECTION_ROLES } from './chart';
import { formNotices } from './form-notices';
import { MAX_SOUNDING_BARS } from './limits';
import { plan, playOrder } from './play-order';
import { type PlainBar, type ResolvedBar, resolveBars } from './resolve-bars';
import { heldPasses, passesToClose } from './vamp-passes';

/** How a chart is unfolded. */
export interface UnfoldOptions {
  /** Starts on this side instead of the chart's; written restarts and labels are then swapped too. */
  readonly direction?: Direction;
  /** Times an open (on cue) section is played, 1 to 64; when missing, the head's own number, or once (twice if it does not close the cycle). */
  readonly vampPasses?: number;
  /** True to begin with the pickup bar; it is left out otherwise and never counts for the sides. */
  readonly pickup?: boolean;
  /** True for a form that goes round: it is held twice (four times) if one pass ends inside a clave cycle, so that the seam keeps the clave. */
  readonly loops?: boolean;
}

/** The role a section plays: as written, or as its name says (`Coro`, `Mambo 2`), or null. */
function roleOf(section: Pick<Section, 'role' | 'name'>): SectionRole | null {
  const name = section.name.toLowerCase().replace(/\s*\d+$/, '');
  return section.role ?? SECTION_ROLES.find((role) => role === name) ?? (name === 'montuno' ? 'coro' : null);
}

/**
 * The chart as it sounds: repeats, endings, jumps, forms, section times and vamps played out, `%` resolved, every bar with its
 * place in the clave cycle. Sides are counted over sounding bars and never start again, except where a head says `clave restart`.
 * A pickup does not count. A section's style, key, tempo and figure hold for that section; the header's hold elsewhere.
 * The chart must come from `readChart` (or be as sound); throws on options out of bounds.
 */
export function unfold(chart: Chart, options: UnfoldOptions = {}): Form {
  const { vampPasses, pickup = false, loops = false } = options;
  assert(
    vampPasses === undefined || (Number.isInteger(vampPasses) && vampPasses >= 1 && vampPasses <= 64),
    `vamp passes must be 1 to 64, got ${vampPasses}`,
  );
  const direction = options.direction ?? chart.clave.direction;
  const swapped = direction !== chart.clave.direction;
  const { resolved } = resolveBars(chart.sections);
  const cycle = stepsInCycle(chart.meter);
  const planned = plan(
    chart,
    (section, index) => {
      if (!section.onCue) return section.times;
      return vampPasses ?? heldPasses(section, resolved[index] ?? [], cycle);
    },
    MAX_SOUNDING_BARS,
  );

  const unfolding = new Unfolding(chart, direction, swapped, resolved, cycle);
  unfolding.play(planned, pickup);
  if (loops && !unfolding.restarted) {
    const passes = passesToClose(unfolding.position, cycle);
    for (let pass = 1; pass < passes; pass++) unfolding.play(planned, false);
  }
  const { bars, visits } = unfolding;
  const last = bars.at(-1);
  const form: Omit<Form, 'notices'> = {
    bars,
    visits,
    clave: { kind: chart.clave.kind, direction },
    meter: chart.meter,
    changes: chart.changes,
    totalTicks: last ? last.tick + last.ticks : 0,
  };
  return { ...form, notices: [...chart.notices, ...formNotices(chart, form, swapped)] };
}

class Unfolding {
  readonly bars: SoundingBar[] = [];
  readonly visits: SectionVisit[] = [];
  /** Step of the clave cycle that comes next. */
  position = 0;
  restarted = false;
  #tick = 0;
  #visit = -1;
  #held: WrittenChord | null = null;
  readonly #heard = new Map<number, number>();
  readonly #firstSides = new Map<string, Side>();
  readonly #firstBar: readonly number[];

  constructor(
    private readonly chart: Chart,
    private readonly direction: Direction,
    private readonly swapped: boolean,
    private readonly resolved: readonly (readonly ResolvedBar[])[],
    private readonly cycle: number,
  ) {
    let written = 0;
    this.#firstBar = chart.sections.map((section) => {
      const first = written;
      written += section.bars.length;
      return first;
    });
  }

  /** Plays the planned sections once through, after what was played before. */
  play(planned: readonly { section: number; entry: boolean }[], pickup: boolean): void {
    let entered = -1;
    for (const step of playOrder(this.chart, planned)) {
      const section = this.chart.sections[step.section] as Section;
      const written = section.bars[step.bar];
      const isPickup = written?.pickup ?? false;
      if (isPickup && !(pickup && this.bars.length === 0)) continue;
      let restart = false;
      if (step.visit !== entered) {
        entered = step.visit;
        restart = section.restart !== null && step.entry;
        if (restart && section.restart) this.#restart(section.restart);
        this.#enter(section, step.bar, isPickup);
      }
      this.#addBar(section, step.section, step.bar, restart, isPickup);
    }
  }

  #restart(label: Direction): void {
    const wanted = this.swapped ? oppositeDirection(label) : label;
    this.position = wanted === this.direction ? 0 : this.cycle / 2;
    this.restarted = true;
  }

  #side(step: number): Side {
    return step < this.cycle / 2 === (this.direction === '2-3') ? 2 : 3;
  }

  #enter(section: Section, bar: number, isPickup: boolean): void {
    const side = this.#side(this.position);
    const place = `${section.name}:${isPickup ? bar + 1 : bar}`;
    const first = this.#firstSides.get(place);
    if (first === undefined) this.#firstSides.set(place, side);
    this.#visit += 1;
    const fromBar = this.bars.length;
    this.visits.push({
      section: section.name,
      role: roleOf(section),
      fromBar,
      toBar: fromBar,
      side,
      onCue: section.onCue,
      otherSide: first !== undefined && first !== side,
    });
  }

  #addBar(section: Section, sectionIndex: number, barIndex: number, restart: boolean, isPickup: boolean): void {
    const unit = this.resolved[sectionIndex]?.[barIndex];
    const writtenBar = (this.#firstBar[sectionIndex] ?? 0) + barIndex;
    const pass = this.#heard.get(writtenBar) ?? 0;
    this.#heard.set(writtenBar, pass + 1);
    for (let time = 0; time < (unit?.times ?? 0); time++) {
      for (const plain of unit?.bars ?? []) {
        const steps = plain.ticks / TICKS_PER_STEP;
        const cycleStep = isPickup ? (this.position - steps + this.cycle) % this.cycle : this.position;
        this.bars.push({
          index: this.bars.length,
          writtenBar,
          pass,
          visit: this.#visit,
          section: section.name,
          role: roleOf(section),
          ...this.#played(plain, isPickup),
          tick: this.#tick,
          ticks: plain.ticks,
          cycleStep,
          side: this.#side(cycleStep),
          restart: restart && time === 0 && plain === unit?.bars[0],
          hits: plain.hits,
          key: section.key ?? this.chart.key,
          style: section.style ?? this.chart.style,
          figure: section.figure ?? this.chart.figure,
          tempo: section.tempo ?? this.chart.tempo,
        });
        this.#tick += plain.ticks;
        if (!isPickup) this.position = (this.position + steps) % this.cycle;
      }
    }
    const visit = this.visits[this.#visit];
    if (visit) this.visits[this.#visit] = { ...visit, toBar: this.bars.length };
  }

  #played(plain: PlainBar, isPickup: boolean): Pick<SoundingBar, 'kind' | 'playing' | 'chords'> {
    const silent = plain.kind !== 'chords' && plain.hits.length === 0;
    const written = plain.chords;
    const held = this.#held ?? plain.carried;
    const listed = silent || written[0]?.tick === 0 || !held ? written : [{ ...held, tick: 0, push: false }, ...written];
    this.#held = listed.at(-1) ?? this.#held;
    const chords = listed.map(({ tick, chord, symbol, push }) => ({ tick: this.#tick + tick, chord, symbol, push }));
    const noChord = plain.kind === 'chords' && listed.every(({ chord }) => chord === null);
    const playing = silent ? (plain.kind === 'stop' ? 'nobody' : 'rhythm') : noChord ? 'rhythm' : 'band';
    const hit = plain.hits.length > 0 || listed.some(({ push }) => push);
    const short = plain.ticks * 2 <= fullBarTicks(this.chart.meter);
    const kind = isPickup ? 'pickup' : silent || (noChord && !hit) ? 'rest' : hit ? 'hit' : short ? 'short' : 'groove';
    return { kind, playing, chords };
  }
}
