import type { Section } from './chart';
import type { FaultList, Place } from './faults';
import { nearest } from './nearest';
import { splitAt } from './read-lines';

/** Reads the names after `form:`; each comes back as the section's head spells it. Names that no section has are faults. */
export function readForm(value: Place, sections: readonly Section[], faults: FaultList): string[] {
  const names = new Map(sections.map((section) => [section.name.toLowerCase(), section.name]));
  if (value.text === '') {
    faults.add('empty form', value, 'section names with commas between them: A, A, B, A');
    return [];
  }
  return splitAt(value.text, ',', value.column).flatMap((piece) => {
    const place: Place = { line: value.line, column: piece.column, text: piece.text };
    const name = names.get(piece.text.replace(/\s+/g, ' ').toLowerCase());
    if (name !== undefined) return [name];
    if (piece.text === '') faults.add('empty form', place, 'a section name between the commas');
    else
      faults.add(
        'unknown section',
        place,
        `a section of this chart: ${[...names.values()].slice(0, 20).join(', ')}`,
        faults.full ? null : nearest(piece.text, [...names.values()].slice(0, 200), 40),
      );
    return [];
  });
}
