/** Lead sheets as a notation program writes them: typed here, not made by the writer under test. */

/** Kind and text of the suffixes that the charts below use (MusicXML 4.0, `kind-value`). */
const KINDS: Readonly<Record<string, string>> = { '': 'major', m: 'minor', '7': 'dominant' };

/** A `harmony` element for a root with one of `KINDS`. */
export function harmony(symbol: string): string {
  const [, step = '', sign = '', suffix = ''] = /^([A-G])([#b]?)(.*)$/.exec(symbol) ?? [];
  const alter = sign === '' ? '' : `<root-alter>${sign === '#' ? 1 : -1}</root-alter>`;
  return `<harmony><root><root-step>${step}</root-step>${alter}</root><kind text="${suffix}">${KINDS[suffix]}</kind></harmony>`;
}

/** One measure in 4/4 of a melody of half notes, with its chords on the first and third beat. */
export function measure(number: number, chords: readonly string[], more: { readonly first?: string; readonly last?: string } = {}): string {
  const note = '<note><pitch><step>G</step><octave>4</octave></pitch><duration>4</duration><voice>1</voice><type>half</type></note>';
  const [one, two] = chords.map(harmony);
  return `<measure number="${number}">${more.first ?? ''}${one ?? ''}${note}${two ?? ''}${note}${more.last ?? ''}</measure>`;
}

/** What the first measure says: two divisions to the quarter, key and time. */
export const attributes = (fifths: number, mode: string, time = '<beats>4</beats><beat-type>4</beat-type>'): string =>
  `<attributes><divisions>2</divisions><key><fifths>${fifths}</fifths><mode>${mode}</mode></key><time>${time}</time></attributes>`;

/** A whole file of one part. */
export const file = (title: string, measures: string): string =>
  `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 3.1 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">
<score-partwise version="3.1"><work><work-title>${title}</work-title></work>
<part-list><score-part id="P1"><part-name>Voice</part-name></score-part></part-list><part id="P1">${measures}</part></score-partwise>`;

/** Bytes of a text. */
export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
