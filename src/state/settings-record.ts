import { PARTS } from '../performance/performance';
import { type HalfNotesPerMinute, halfNotesPerMinute, TEMPO_RANGE } from '../vocabulary';
import {
  type Balance,
  CLAVE_KINDS,
  COLOURS,
  DEFAULT_BALANCE,
  DEVICES,
  HANDS,
  LEVELS,
  type Loop,
  type PartBalance,
  type Preferences,
  type Settings,
} from './settings';

type Fields = Readonly<Record<string, unknown>>;

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
    devices: Array.isArray(devices) ? DEVICES.filter((device) => devices.includes(device)) : fallback.devices,
    hands: oneOf(HANDS, fields.hands) ?? fallback.hands,
    colour: oneOf(COLOURS, fields.colour) ?? fallback.colour,
    transpose: whole(fields.transpose, 0, 11) ?? fallback.transpose,
    seed: whole(fields.seed, 0, 1_000_000) ?? fallback.seed,
    loop: fields.loop === null ? null : (loopFrom(fields.loop) ?? fallback.loop),
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
export function tempoFrom(value: unknown): HalfNotesPerMinute | null {
  const number = between(value, TEMPO_RANGE.from, TEMPO_RANGE.to);
  return number === null ? null : halfNotesPerMinute(number);
}

/** The fields of a parsed object; none for anything that is no object. */
export function fieldsOf(value: unknown): Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : {};
}

function oneOf<const Value>(values: readonly Value[], value: unknown): Value | null {
  return values.find((candidate) => candidate === value) ?? null;
}

function between(value: unknown, low: number, high: number): number | null {
  return typeof value === 'number' && value >= low && value <= high ? value : null;
}

function whole(value: unknown, low: number, high: number): number | null {
  const number = between(value, low, high);
  return number !== null && Number.isInteger(number) ? number : null;
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
