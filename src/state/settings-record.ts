import { STYLES } from '../music/styles/styles';
import { PARTS } from '../performance/performance';
import { type HalfNotesPerMinute, halfNotesPerMinute, TEMPO_RANGE } from '../vocabulary';
import { LANGUAGES } from '../words/language';
import { NOTE_NAMINGS } from '../words/spoken';
import { cellsFrom, editsFrom, ownFigureFrom, percussionFrom } from './figure-record';
import { between, fieldsOf, oneOf, whole } from './saved-fields';
import {
  type Balance,
  CLAVE_KINDS,
  COLOURS,
  COMPASSES,
  DEFAULT_BALANCE,
  DEVICES,
  FEELS,
  HANDS,
  LEVELS,
  type Loop,
  type PartBalance,
  type Preferences,
  type Settings,
  SOLOS,
  STRETCHES,
} from './settings';

const STYLE_ROWS = STYLES.map(({ name }) => name);

/**
 * Settings out of a saved record. Every field stands alone: one that is missing or bad takes its place from `fallback`, the others are kept.
 * @param saved anything that was parsed from JSON
 */
export function settingsFrom(saved: unknown, fallback: Settings): Settings {
  const fields = fieldsOf(saved);
  const devices = fields.devices;
  return {
    tempo: tempoFrom(fields.tempo) ?? fallback.tempo,
    goalTempo: tempoFrom(fields.goalTempo) ?? fallback.goalTempo,
    direction: oneOf(['2-3', '3-2'], fields.direction) ?? fallback.direction,
    kind: oneOf(CLAVE_KINDS, fields.kind) ?? fallback.kind,
    level: oneOf(LEVELS, fields.level) ?? fallback.level,
    style: orNull(fields.style, (value) => oneOf(STYLE_ROWS, value), fallback.style),
    devices: Array.isArray(devices) ? DEVICES.filter((device) => devices.includes(device)) : fallback.devices,
    hands: oneOf(HANDS, fields.hands) ?? fallback.hands,
    colour: oneOf(COLOURS, fields.colour) ?? fallback.colour,
    stretch: oneOf(STRETCHES, fields.stretch) ?? fallback.stretch,
    compass: oneOf(COMPASSES, fields.compass) ?? fallback.compass,
    cells: orNull(fields.cells, cellsFrom, fallback.cells),
    ownFigure: orNull(fields.ownFigure, ownFigureFrom, fallback.ownFigure),
    crossed: typeof fields.crossed === 'boolean' ? fields.crossed : fallback.crossed,
    percussion: percussionFrom(fields.percussion) ?? fallback.percussion,
    edits: editsFrom(fields.edits) ?? fallback.edits,
    undoneEdits: editsFrom(fields.undoneEdits) ?? fallback.undoneEdits,
    solo: orNull(fields.solo, (value) => oneOf(SOLOS, value), fallback.solo),
    feel: oneOf(FEELS, fields.feel) ?? fallback.feel,
    transpose: whole(fields.transpose, 0, 11) ?? fallback.transpose,
    seed: whole(fields.seed, 0, 1_000_000) ?? fallback.seed,
    loop: orNull(fields.loop, loopFrom, fallback.loop),
    countInBars: oneOf([0, 1, 2], fields.countInBars) ?? fallback.countInBars,
    round: oneOf(['round and round', 'once, then end'], fields.round) ?? fallback.round,
    pulse: oneOf(['halves', 'quarters'], fields.pulse) ?? fallback.pulse,
    view: oneOf(['grid', 'staff'], fields.view) ?? fallback.view,
    balance: balanceFrom(fields.balance, fallback.balance),
  };
}

/** Preferences out of a saved record, field by field like `settingsFrom`. */
export function preferencesFrom(saved: unknown, fallback: Preferences): Preferences {
  const fields = fieldsOf(saved);
  return {
    language: oneOf(LANGUAGES, fields.language) ?? fallback.language,
    noteNames: oneOf(NOTE_NAMINGS, fields.noteNames) ?? fallback.noteNames,
    theme: oneOf(['device', 'paper', 'night'], fields.theme) ?? fallback.theme,
    tempoUnit: oneOf(['half', 'quarter'], fields.tempoUnit) ?? fallback.tempoUnit,
    shortcuts: typeof fields.shortcuts === 'boolean' ? fields.shortcuts : fallback.shortcuts,
    paper: oneOf(['A4', 'Letter'], fields.paper) ?? fallback.paper,
    ceiling: between(fields.ceiling, 0, 1) ?? fallback.ceiling,
    tuningCents: between(fields.tuningCents, -50, 50) ?? fallback.tuningCents,
    cautionSeen: typeof fields.cautionSeen === 'boolean' ? fields.cautionSeen : fallback.cautionSeen,
  };
}

/** A tempo on offer, rounded to a quarter of a half note, or null. */
function tempoFrom(value: unknown): HalfNotesPerMinute | null {
  const number = between(value, TEMPO_RANGE.from, TEMPO_RANGE.to);
  return number === null ? null : halfNotesPerMinute(number);
}

/** A saved value that may be null: null stays, a good value is read, anything else takes the fallback. */
function orNull<Value>(saved: unknown, read: (saved: unknown) => Value | null, fallback: Value | null): Value | null {
  return saved === null ? null : (read(saved) ?? fallback);
}

function loopFrom(value: unknown): Loop | null {
  const fields = fieldsOf(value);
  const fromBar = whole(fields.fromBar, 0, 100_000);
  const toBar = whole(fields.toBar, 0, 100_000);
  return fromBar !== null && toBar !== null && toBar > fromBar ? { fromBar, toBar } : null;
}

function balanceFrom(value: unknown, fallback: Balance): Balance {
  const fields = fieldsOf(value);
  const read = (saved: unknown, otherwise: PartBalance): PartBalance => {
    const part = fieldsOf(saved);
    return { level: between(part.level, 0, 1) ?? otherwise.level, muted: typeof part.muted === 'boolean' ? part.muted : otherwise.muted };
  };
  const entries = PARTS.map((part) => [part, read(fields[part], fallback[part] ?? DEFAULT_BALANCE[part])] as const);
  return Object.fromEntries(entries) as Record<(typeof PARTS)[number], PartBalance>;
}
