import type { Direction, Level } from '../vocabulary';
import type { ArrangeOptions } from './arrange-options';
import type { Form, SoundingBar } from './chart/chart';
import { rotate } from './clave/patterns';
import { sideSteps } from './harmony/bar-steps';
import type { BarFigure } from './montuno/figure';
import { ownPattern } from './montuno/own-figure';
import { LEVEL_PATTERNS, NEUTRAL_PATTERN, type Pattern, pattern, SAFE_PATTERN } from './montuno/patterns';
import { soloStepOf } from './montuno/solo';
import { pianoFor } from './styles/roles';
import { type StyleRow, styleOf } from './styles/styles';

/**
 * What the piano is asked for in each bar: what the player has fixed, else what the section's role and style say.
 * `written` is the direction of the chart as typed, to which written figures belong.
 */
export function figureOfBars(
  form: Form,
  options: ArrangeOptions,
  styleAt: (bar: SoundingBar) => StyleRow,
  written: Direction,
): (bar: SoundingBar) => BarFigure {
  const visits = visitNumbers(form);
  const known = new Map<number, BarFigure>();
  return (bar) => {
    const found = known.get(bar.index);
    if (found) return found;
    const byRole = pianoFor(bar.role, visits[bar.visit] ?? 0);
    const level = options.level ?? byRole.level;
    const solo = options.solo === 'example' && sideSteps(bar) === 8 ? soloStepOf(bar, form.bars.length) : null;
    const devices = [
      ...new Set([...(options.devices ?? []), ...(options.level === undefined ? byRole.devices : []), ...(solo?.devices ?? [])]),
    ];
    const asked = solo ? soloPatterns(solo.patterns, bar, form) : patternsIn(bar, level, form, options, styleAt(bar), written);
    const figure = { level, devices, loudness: byRole.loudness, patterns: options.crossed ? asked.map(crossed) : asked };
    known.set(bar.index, figure);
    return figure;
  };
}

function patternsIn(
  bar: SoundingBar,
  level: Level,
  form: Form,
  options: ArrangeOptions,
  style: StyleRow,
  written: Direction,
): readonly Pattern[] {
  if (sideSteps(bar) === 6) return bar.figure ? [ownPattern(bar.figure, written)] : (styleOf('bembe').piano[level] ?? []);
  if (!style.onClave) return [SAFE_PATTERN];
  if (options.devices?.includes('one-bar-neutral')) return [NEUTRAL_PATTERN];
  if (options.ownFigure) return [ownPattern(options.ownFigure.text, options.ownFigure.direction)];
  if (options.cells) return [pattern('chosen', options.cells.two, options.cells.three)];
  if (bar.figure) return [ownPattern(bar.figure, written)];
  const kind = form.clave.kind === 'bembe' ? 'son' : form.clave.kind;
  const rows = style.piano[level] ?? LEVEL_PATTERNS[level];
  const fitting = rows.filter(({ claves }) => claves.includes(kind));
  return fitting.length > 0 ? fitting : [NEUTRAL_PATTERN];
}

/** The patterns of a solo step that go with the clave, beginning with another one in each cycle. */
function soloPatterns(patterns: readonly Pattern[], bar: SoundingBar, form: Form): readonly Pattern[] {
  const fitting = patterns.filter(({ claves }) => claves.includes(form.clave.kind));
  return rotate(fitting, Math.floor(bar.index / 2));
}

/** The same two bars on each other's sides: what a crossed montuno is. */
function crossed(row: Pattern): Pattern {
  return { ...row, name: `${row.name}, crossed`, two: { ...row.three, side: 2 }, three: { ...row.two, side: 3 } };
}

/** For each visit of a section, how many times a section of that name was heard before. */
function visitNumbers(form: Form): number[] {
  const heard = new Map<string, number>();
  return form.visits.map(({ section }) => {
    const times = heard.get(section) ?? 0;
    heard.set(section, times + 1);
    return times;
  });
}
