/**
 * Corrections to offer for a chord symbol that cannot be read. They are only offered, never applied: `readChord` stays a fault
 * until the person takes one.
 */

/** Note names in Spanish, as some Latin charts have them. */
const SOLFEGE: Readonly<Record<string, string>> = { do: 'C', re: 'D', mi: 'E', fa: 'F', sol: 'G', la: 'A', si: 'B' };

/** Suffixes met most often, the commonest first; a mistyped one is compared with these. Common practice, no source. */
const COMMON = [
  '7',
  'm7',
  'm',
  'maj7',
  '6',
  'm6',
  '9',
  'm9',
  'maj9',
  '7b9',
  'm7b5',
  'dim7',
  'dim',
  '13',
  '6/9',
  'sus4',
  '7sus4',
  '9sus4',
  'aug',
  '7alt',
  '7#9',
  '7#11',
  '7b13',
  '7#5',
  '7b5',
  '11',
  'm11',
  '13b9',
  'mMaj7',
  'm6/9',
  'add9',
  'madd9',
  'maj7#11',
  'maj13',
  'sus2',
  'aug7',
  '7(b9,b13)',
  '7(b9)',
  '7(#9)',
  'm7(b5)',
  'maj7(#11)',
  'dom7',
  'min7',
  'min',
  'maj',
] as const;

/**
 * Candidates in order of likelihood, from a symbol in plain signs (see `plainSymbol`), at most 64 characters. The caller takes the first that can be read.
 * Example: `h7` gives `B7`, `bb7` gives `Bb7`, `C4` gives `Csus4`, `Sol7` gives `G7`.
 */
export function* corrections(plain: string): Generator<string> {
  const joined = plain.replace(/\s+/g, '');
  yield joined;
  const rooted = withRoot(joined);
  yield rooted;
  const slash = rooted.lastIndexOf('/');
  const body = slash < 0 ? rooted : rooted.slice(0, slash);
  const tail = slash < 0 ? '' : withRoot(rooted.slice(slash + 1));
  const bass = /^[A-G](bb|##|b|#)?/.exec(tail)?.[0] ?? '';
  if (bass !== '') yield `${body}/${bass}`;
  if (slash >= 0 && tail === '') yield body;
  for (const [part, end] of bass === '' ? [[rooted, '']] : [[body, `/${bass}`]]) {
    const root = /^[A-G](bb|##|b|#)?/.exec(part ?? '')?.[0] ?? '';
    if (root === '') continue;
    const suffix = (part ?? '').slice(root.length);
    for (const better of suffixes(suffix)) yield root + better + (end ?? '');
    for (let length = suffix.length - 1; length >= 0; length -= 1) yield root + suffix.slice(0, length) + (end ?? '');
  }
}

/** Mends the letter in front: Spanish names, lower case, H for B natural, a capital B for a flat. */
function withRoot(symbol: string): string {
  const spanish = /^(do|re|mi|fa|sol|la|si)(?!aj)/i.exec(symbol)?.[0];
  if (spanish !== undefined) return (SOLFEGE[spanish.toLowerCase()] ?? '') + symbol.slice(spanish.length);
  const first = symbol.charAt(0);
  const letter = first === 'H' || first === 'h' ? 'B' : /[a-g]/.test(first) ? first.toUpperCase() : first;
  return letter + symbol.slice(1).replace(/^B(?=$|[^a-zA-Z]|m|M)/, 'b');
}

function* suffixes(suffix: string): Generator<string> {
  if (suffix.includes('(')) yield `${suffix})`;
  yield suffix.replace(/^(m|mi|min|-)[/(]?([24])\)?$/, '$1add$2');
  yield suffix.replace(/^([79]|13)?[/(]?([24])\)?/, '$1sus$2');
  yield suffix.replace(/^0(?=7|$)/, 'dim');
  let best: string | null = null;
  let distance = Math.min(3, suffix.length);
  for (const known of COMMON) {
    const found = edits(suffix, known);
    if (found < distance) [best, distance] = [known, found];
  }
  if (best !== null) yield best;
}

/** Insertions, deletions, replacements and swaps of neighbours that turn one text into the other; capitals do not count. */
function edits(from: string, to: string): number {
  const [a, b] = [from.toLowerCase(), to.toLowerCase()];
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a.charAt(i - 1) === b.charAt(j - 1) ? 0 : 1;
      let least = Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + same);
      if (i > 1 && j > 1 && a.charAt(i - 1) === b.charAt(j - 2) && a.charAt(i - 2) === b.charAt(j - 1))
        least = Math.min(least, (before[j - 2] ?? 0) + 1);
      next.push(least);
    }
    before = row;
    row = next;
  }
  return row[b.length] ?? 0;
}
