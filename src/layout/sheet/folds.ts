import type { NotatedBar, NotatedPitch, Notation } from '../notation/notation';
import type { SystemRange } from '../notation/systems';

/** A system to print, or a run of bars that stands once already. Bars are indexes into the notation. */
export type SheetItem =
  | { readonly kind: 'system'; readonly range: SystemRange }
  | {
      readonly kind: 'as before';
      readonly range: SystemRange;
      readonly same: SystemRange;
      readonly section: string | null;
      readonly whole: boolean;
    };

/**
 * Systems of a long form with every repeated one written once: a system that is the same as an earlier one, note for note, with the
 * same ties in and out, chords, sides and section mark, becomes a reference to it; neighbouring references are joined. The last
 * system is always printed, so that the end is seen. `whole` tells that the reference covers a section from its first bar to its last.
 */
export function foldSystems(notation: Notation, systems: readonly SystemRange[]): SheetItem[] {
  const printed = new Map<string, SystemRange>();
  const items: SheetItem[] = [];
  systems.forEach((range, i) => {
    const content = systemContent(notation, range);
    const same = printed.get(content);
    if (!same || i === systems.length - 1) {
      if (!same) printed.set(content, range);
      items.push({ kind: 'system', range });
      return;
    }
    const last = items.at(-1);
    const section = notation.bars[range.from]?.sectionStart ?? null;
    if (last?.kind === 'as before' && last.same.to === same.from && section === null) {
      items[items.length - 1] = reference(notation, { from: last.range.from, to: range.to }, { from: last.same.from, to: same.to });
    } else items.push(reference(notation, range, same));
  });
  return items;
}

function reference(notation: Notation, range: SystemRange, same: SystemRange): SheetItem {
  const section = notation.bars[range.from]?.sectionStart ?? null;
  const endsSection = (to: number): boolean => to >= notation.bars.length || notation.bars[to]?.sectionStart !== null;
  return { kind: 'as before', range, same, section, whole: section !== null && endsSection(range.to) && endsSection(same.to) };
}

/**
 * Everything that is played in a system, without its place in the form: signatures that only the start of the piece shows and
 * reminders of the bar before are left out.
 */
function systemContent(notation: Notation, range: SystemRange): string {
  const bars = notation.bars.slice(range.from, range.to).map(({ index: _, tick: __, ...rest }: NotatedBar, i) => {
    const opens = range.from + i === 0;
    return { ...rest, meterChange: rest.meterChange && !opens, keyChange: rest.keyChange && !opens };
  });
  return JSON.stringify(bars, (_, value: unknown) => (isReminder(value) ? { ...value, accidental: null, courtesy: false } : value));
}

const isReminder = (value: unknown): value is NotatedPitch =>
  typeof value === 'object' && value !== null && 'courtesy' in value && value.courtesy === true;
