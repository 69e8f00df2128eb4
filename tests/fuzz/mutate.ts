/** Bits of chart language and of everything else that lands in a text field. */
const BITS = [
  '|',
  '||',
  '|:',
  ':|',
  ':||',
  '|:|',
  ':| x3',
  ':| x0',
  ':| x999',
  '|1.',
  '|2.',
  ':|2.',
  '|1,2.',
  '|9.',
  '%',
  '%%',
  '/',
  '/ / / /',
  '>',
  '> ',
  '<',
  '>C',
  '{',
  '}',
  '{1 2& 4&~}',
  '{9}',
  '{}',
  '(',
  ')',
  '(2/4)',
  '(3/8)',
  '(pickup)',
  '(6/8)',
  '[',
  ']',
  '[A]',
  '[A, x9, on cue]',
  '[B, clave restart 3-2]',
  '[, x0]',
  '[Coro, role: none, role: coro]',
  'form: A, B',
  'form:',
  'form: ,,',
  'title:',
  'key: H',
  'clave: 3-4',
  'clave: 2-3 bembe',
  'tempo: 92',
  'tempo: half = 1e9',
  'tempo: -5',
  'meter: 6/8',
  'meter: 7/8',
  'style: polka',
  'figure: xxxx',
  'changes: as played',
  '<segno>',
  '<coda>',
  '<to coda>',
  '<fine>',
  '<D.S. al coda>',
  '<D.C. al fine>',
  '<D.C. al coda>',
  '<D.S. al fine>',
  '<x>',
  'stop',
  'rest 8',
  'rest 999',
  'rest 0',
  'rest',
  'N.C.',
  'N.C',
  ';',
  '; x',
  ',',
  ':',
  'x8',
  'Cm7',
  'C4',
  'h',
  'Hm7',
  'c',
  'C/',
  'C//',
  'C7(b9',
  'Cmaj7#11b9sus4/F##',
  '♭♭♭',
  '𝄞',
  '\u0000',
  '\ufeff',
  '\u2028',
  '\t',
  '\n',
  '\r',
  '\r\n',
  '"',
  '<script>alert(1)</script>',
  '9',
  '99999999999999999999',
  '-',
  '–',
];

/** A text changed in one to eight places: bits put in, cut, doubled, exchanged or replaced by any character. */
export function mutate(text: string, random: () => number): string {
  const below = (limit: number): number => Math.floor(random() * limit);
  let result = text;
  for (let edits = random() < 0.6 ? 1 : 1 + below(8); edits > 0; edits--) {
    const at = below(result.length + 1);
    const length = below(12);
    const bit = BITS[below(BITS.length)] ?? '';
    const cut = result.slice(at, at + length);
    switch (below(6)) {
      case 0:
        result = result.slice(0, at) + result.slice(at + length);
        break;
      case 1:
        result = `${result.slice(0, at)}${cut}${cut}${result.slice(at + length)}`;
        break;
      case 2:
        result = `${result.slice(0, at)}${String.fromCharCode(below(random() < 0.5 ? 128 : 65_536))}${result.slice(at + 1)}`;
        break;
      case 3:
        result = `${result.slice(0, at)} ${bit} ${result.slice(at + below(3))}`;
        break;
      case 4: {
        const to = below(result.length + 1);
        result = `${result.slice(0, to)}${cut}${result.slice(to)}`;
        break;
      }
      default:
        result = result.slice(0, at) + bit + result.slice(at);
    }
  }
  return result;
}
