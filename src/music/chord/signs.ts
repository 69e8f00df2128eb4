/** Printed signs and the ASCII that means the same, of the same length in UTF-16 units, so that places in the text stay true. */
const SIGNS: Readonly<Record<string, string>> = {
  '♭': 'b',
  '♯': '#',
  '𝄫': 'bb',
  '𝄪': '##',
  Δ: '^',
  '∆': '^',
  '△': '^',
  '▵': '^',
  ø: 'ø',
  Ø: 'ø',
  '∅': 'ø',
  '⌀': 'ø',
  '°': 'o',
  º: 'o',
  '˚': 'o',
  '−': '-',
  '–': '-',
  '—': '-',
  '‑': '-',
  '⁻': '-',
  '⁺': '+',
  '∕': '/',
  '⁄': '/',
  '²': '2',
  '⁴': '4',
  '⁵': '5',
  '⁶': '6',
  '⁷': '7',
  '⁹': '9',
  '¹': '1',
  '³': '3',
};
const SIGN = new RegExp(`[${Object.keys(SIGNS).join('')}]`, 'gu');

/** The symbol with printed signs (♭ ♯ Δ ø ° − superscripts) as ASCII letters, `^`, `ø`, `o`; as long as it was. */
export const plainSymbol = (symbol: string): string => symbol.replace(SIGN, (sign) => SIGNS[sign] ?? sign);
