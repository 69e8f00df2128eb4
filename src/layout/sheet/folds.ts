import type { Notation } from '../notation/notation';
import type { SystemRange } from '../notation/systems';
import { barContent, standsFor } from './bar-content';

/** A system to print, or sections that stand once already. Bars are indexes into the notation; `section` names what begins in the range. */
export type SheetItem =
  | { readonly kind: 'system'; readonly range: SystemRange }
  | { readonly kind: 'as before'; readonly range: SystemRange; readonly same: SystemRange; readonly section: string };

/**
 * Systems of a long form, in order, with every repeated section written once: a section whose systems are all the same as those of an
 * earlier time through, note for note, with the same ties, chords, sides and name, becomes a reference to it. Parts of
 * sections are never left out, so that the reader's eye does not jump inside one. The last section is always printed, so that the end is seen.
 */
export function foldSystems(notation: Notation, systems: readonly SystemRange[]): SheetItem[] {
  const printed = new Map<string, SystemRange>();
  const passages = sectionPassages(notation, systems);
  return passages.flatMap((passage, i): SheetItem[] => {
    const range = { from: passage[0]?.from ?? 0, to: passage.at(-1)?.to ?? 0 };
    const content = passageContent(notation, range);
    const [here, before] = [notation.bars[range.from], notation.bars[printed.get(content)?.from ?? -1]];
    const same = here && before && standsFor(before, here) ? printed.get(content) : undefined;
    if (!same) printed.set(content, range);
    if (!same || i === passages.length - 1) return passage.map((system) => ({ kind: 'system', range: system }));
    return [{ kind: 'as before', range, same, section: sectionNames(notation, range) }];
  });
}

/** The systems in runs, each from one that begins with a section to the next such. */
function sectionPassages(notation: Notation, systems: readonly SystemRange[]): SystemRange[][] {
  const passages: SystemRange[][] = [];
  for (const system of systems) {
    const last = passages.at(-1);
    if (last && notation.bars[system.from]?.sectionStart === null) last.push(system);
    else passages.push([system]);
  }
  return passages;
}

const sectionNames = (notation: Notation, range: SystemRange): string =>
  notation.bars
    .slice(range.from, range.to)
    .flatMap((bar) => bar.sectionStart ?? [])
    .join(', ');

/** Everything that is played in a passage, with its names and the signatures that change inside it, whatever its place in the form. */
function passageContent(notation: Notation, range: SystemRange): string {
  const bars = notation.bars.slice(range.from, range.to);
  const marks = bars.map((bar, i) => {
    const opens = range.from + i === 0;
    return [bar.sectionStart, bar.repeat, bar.ending, bar.meterChange && !opens, bar.keyChange && !opens];
  });
  return JSON.stringify([marks, bars.map(barContent)]);
}
