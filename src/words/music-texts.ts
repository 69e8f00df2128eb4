/** Names of styles that are typed in plain letters and shown as they are written. */
const STYLES: Readonly<Record<string, string>> = { 'cha-cha-cha': 'cha-cha-chá', danzon: 'danzón', bembe: 'bembé' };

const itself = (text: string): string => text;

/** Texts that the tables of the music bring along in English, as they are shown: English shows them as they stand. */
export const MUSIC_TEXTS = {
  /** What was expected where a chart has a fault: `a key such as D, Dm, Bb or F# minor`. */
  expected: itself,
  /** What a chart of the demo book teaches. */
  teaches: itself,
  /** How well a tempo or a pattern is known: `tempo from memory`. */
  evidence: itself,
  /** A style: `danzon` gives `danzón`. */
  style: (name: string): string => STYLES[name] ?? name,
  /** A pattern of the percussion: `mambo bell`. */
  pattern: itself,
  /** Two cells by their names: `standard, all offbeats`. */
  cells: itself,
  /** What a figure is to the clave: `aligned`, `neutral`, `crossed`. */
  verdict: itself,
} as const;
