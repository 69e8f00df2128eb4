/** A chord symbol as it is printed: as typed, with real signs for the flats and sharps of root, bass and numbers (`Bb7b9/D` is `B♭7♭9/D`). */
export function chordText(symbol: string): string {
  const sign = (text: string): string => text.replace('b', '♭').replace('#', '♯');
  return symbol
    .replace(/^([A-G])([b#])/, (_, letter: string, mark: string) => letter + sign(mark))
    .replace(/\/([A-G])([b#])$/, (_, letter: string, mark: string) => `/${letter}${sign(mark)}`)
    .replace(/[b#](?=\d)/g, sign);
}
