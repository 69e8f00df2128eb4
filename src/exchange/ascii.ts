/** Letters whose plain form is not reached by taking accents off. */
const SPELLED: Readonly<Record<string, string>> = {
  '♭': 'b',
  '♯': '#',
  '♮': '',
  Δ: 'maj',
  '∆': 'maj',
  ø: 'o',
  Ø: 'O',
  '°': 'dim',
  ß: 'ss',
  æ: 'ae',
  Æ: 'AE',
  œ: 'oe',
  Œ: 'OE',
  ł: 'l',
  Ł: 'L',
  đ: 'd',
  Đ: 'D',
  '–': '-',
  '—': '-',
  '‘': "'",
  '’': "'",
  '“': '"',
  '”': '"',
  '…': '...',
};

/** `text` in printable ASCII: accents are dropped (`Salón` is `Salon`), what has no plain form is left out, white space is one blank. */
export function toAscii(text: string): string {
  return [...text]
    .map((character) => SPELLED[character] ?? character)
    .join('')
    .normalize('NFD')
    .replace(/\s+/gu, ' ')
    .replace(/[^ -~]/gu, '')
    .trim();
}
