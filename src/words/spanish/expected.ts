/**
 * What was expected in a chart, in Spanish: the English text, with `{}` for what changes, and what is said for it, with `{1}`, `{2}` … for the same
 * pieces in their order. What a piece holds is looked up in turn. Words that are typed into charts (`half = 92`, `role:`) stay as they are typed.
 */
const ESPERADO: readonly (readonly [string, string])[] = [
  ['chart text: this looks like a file of another kind', 'el texto de un cifrado: esto parece un archivo de otra clase'],
  ['chart text: more than {} faults, the rest are not listed', 'el texto de un cifrado: hay más de {1} faltas, las demás no se enumeran'],
  ['at most {} characters, this is {}', 'a lo más {1} signos, aquí hay {2}'],
  ['at most {} characters: {}', 'a lo más {1} signos: {2}'],
  ['at most {} bars as they sound, repeats played', 'a lo más {1} compases como suenan, con las repeticiones'],
  ['a chart needs at least one bar: | Em7 | A7 |', 'al menos un compás: | Em7 | A7 |'],
  ['a header line: {}', 'una línea de encabezado: {1}'],
  ['the clave as a header line', 'la clave en una línea de encabezado'],
  ['the tempo as a header line, with the note that is counted', 'el tempo en una línea de encabezado, con la figura que se cuenta'],
  ['the key as a header line', 'el tono en una línea de encabezado'],
  ["a section's name in brackets", 'el nombre de la sección entre corchetes'],
  ['one line "{}:", the first is on line {}', 'una sola línea «{1}:»; la primera está en la línea {2}'],
  ['this line before the first bar, or in a section head: {}', 'esta línea antes del primer compás, o en la cabeza de una sección: {1}'],
  ['a key such as D, Dm, Bb or F# minor', 'un tono como D, Dm, Bb o F# minor'],
  ['a key such as D, Dm or Bb', 'un tono como D, Dm o Bb'],
  ['a key with at most seven sharps or flats', 'un tono de siete sostenidos o bemoles a lo más'],
  ['a key after the loop: in D, in Gm', 'un tono después de la vuelta: in D, in Gm'],
  ['a key', 'un tono'],
  [
    'a direction and a clave: 2-3 son, 3-2 son, 2-3 rumba or 3-2 rumba (2-3 bembe in 6/8)',
    'una dirección y una clave: 2-3 son, 3-2 son, 2-3 rumba o 3-2 rumba (en 6/8, 2-3 bembe)',
  ],
  ['2-3 or 3-2', '2-3 o 3-2'],
  ['the clave of 6/8: bembe', 'la clave de 6/8: bembe'],
  ['a clave of 4/4 (son, rumba), or the line meter: 6/8', 'una clave de 4/4 (son, rumba), o la línea meter: 6/8'],
  ['half = 92 or quarter = 184: {}', 'half = 92 (blancas) o quarter = 184 (negras): {1}'],
  ['{} to {} half notes a minute (quarter = {} to {})', 'de {1} a {2} blancas por minuto (quarter = {3} a {4})'],
  ['which note is counted: {} or {}', 'qué figura se cuenta: {1} o {2}'],
  ['which note is counted: {}', 'qué figura se cuenta: {1}'],
  ['a style: {}', 'un estilo: {1}'],
  ['4/4 or 6/8', '4/4 o 6/8'],
  ['on the beat, or as played', 'on the beat (a tierra) o as played (como se toca)'],
  [
    'two bars of {} steps, x for a stroke and . for a rest, such as {}; found {} steps',
    'dos compases de {1} pasos, x para un golpe y . para un silencio, como {2}; hay {3} pasos',
  ],
  ["a ] after the section's name", 'un ] después del nombre de la sección'],
  ['a name first: [A] or [Coro, role: coro]', 'primero un nombre: [A] o [Coro, role: coro]'],
  [
    'a name no other section has; a form: line plays a section again',
    'un nombre que no tenga otra sección; con una línea form: se repite una sección',
  ],
  ['at least one bar in every section', 'al menos un compás en cada sección'],
  [
    'role: …, x8, on cue, clave restart 3-2, clave: 3-2, style: …, key: …, tempo: … or figure: …',
    'role: …, x8, on cue, clave restart 3-2, clave: 3-2, style: …, key: …, tempo: … o figure: …',
  ],
  ['each attribute once: this section has "{}" already', 'cada dato una vez: esta sección ya tiene «{1}»'],
  ['a role: {}', 'un papel: {1}'],
  ['{} to {}: how often the section is played', 'de {1} a {2}: cuántas veces se toca la sección'],
  ['section names with commas between them: A, A, B, A', 'nombres de secciones con comas: A, A, B, A'],
  ['a section name between the commas', 'el nombre de una sección entre las comas'],
  ['a section of this chart: {}', 'una sección de este cifrado: {1}'],
  ['a chord, %, N.C. or stop in every bar', 'un acorde, %, N.C. o stop en cada compás'],
  ['a bar after this barline', 'un compás después de esta barra'],
  ['a bar before this barline', 'un compás antes de esta barra'],
  ['a bar after this mark', 'un compás después de esta marca'],
  ['a bar before <{}>', 'un compás antes de <{1}>'],
  ['a bar before it to repeat (two before %%)', 'antes un compás que repetir (dos antes de %%)'],
  ['a chord on the first beat: there is none before it to hold', 'un acorde en el primer tiempo: antes no hay ninguno que mantener'],
  ['a chord symbol such as {}', 'un acorde como {1}'],
  ['Dm7 or G7(b9)', 'Dm7 o G7(b9)'],
  ['a chord symbol of at most {} characters', 'un acorde de {1} signos a lo más'],
  ['a chord symbol without spaces inside', 'un acorde sin espacios por dentro'],
  ['a chord symbol', 'un acorde'],
  ['a root from A to G in capitals, with b or # if need be', 'una fundamental de A a G en mayúscula, con b o # si hace falta'],
  ['a bass note from A to G in capitals after the slash', 'después de la barra, un bajo de A a G en mayúscula'],
  ['a chord suffix such as m7, maj7, 7b9, m7b5, dim7, 6/9 or sus4', 'una terminación de acorde como m7, maj7, 7b9, m7b5, dim7, 6/9 o sus4'],
  ['one seventh only', 'una sola séptima'],
  ['one number only', 'un solo número'],
  ['one number only; further notes go in brackets', 'un solo número; las demás notas van entre paréntesis'],
  ['maj7, maj9, maj11 or maj13', 'maj7, maj9, maj11 o maj13'],
  ['sus{} or add{}', 'sus{1} o add{2}'],
  ['one of {}', 'uno de estos: {1}'],
  ['add2, add4, add6, add9, add11 or add13', 'add2, add4, add6, add9, add11 o add13'],
  ['a note that chords take: b9, #9, #11 or b13', 'una nota que los acordes llevan: b9, #9, #11 o b13'],
  ['b5, #5, b9, #9, #11 or b13', 'b5, #5, b9, #9, #11 o b13'],
  ['b5, #5, b9, #9, #11, b13 … and a closing bracket', 'b5, #5, b9, #9, #11, b13 … y un paréntesis que cierre'],
  ['a closing bracket', 'un paréntesis que cierre'],
  ['a closing bracket: {}', 'un signo que cierre: {1}'],
  ['alt only on a dominant seventh', 'alt solo en una séptima de dominante'],
  ['{} words in a bar with slashes, one for each {}', '{1} signos en un compás con barras, uno por {2}'],
  [
    '{} chords in the bar, or a / for every {} that holds the chord before it',
    '{1} acordes en el compás, o una / por cada {2} que mantiene el acorde anterior',
  ],
  ['1, 2 or 4', '1, 2 o 4'],
  ['1 or 2', '1 o 2'],
  ['4 or 2', '4 o 2'],
  ['6 or 2', '6 o 2'],
  ['3 or 1', '3 o 1'],
  ['quarter', 'negra'],
  ['eighth (or for each dotted beat)', 'corchea (o por cada negra con puntillo)'],
  ['a chord directly after >, without a space', 'un acorde justo después de >, sin espacio'],
  ['a chord after >', 'un acorde después de >'],
  ['{} alone in its bar', '{1} sin nada más en su compás'],
  ['all hits of a bar in one pair of braces', 'todos los cortes de un compás en un solo par de llaves'],
  ['hits in a bar of chords or beside stop, not in a rest', 'cortes en un compás de acordes o junto a stop, no en un silencio'],
  ['hits in a bar of their own, not beside %%', 'cortes en un compás propio, no junto a %%'],
  ['% in a whole bar: it takes the length of the bar it repeats', '% en un compás entero: dura lo que el compás que repite'],
  ['rest and a number of bars from 1 to {}: rest 8', 'rest y un número de compases de 1 a {1}: rest 8'],
  [
    '{} for a bar of half the length, or (pickup); brackets of a chord symbol follow it without a space',
    '{1} para un compás de la mitad, o (pickup); los paréntesis de un acorde van pegados a él',
  ],
  ['(pickup) in the very first bar alone', '(pickup) solo en el primer compás de todos'],
  ['eighths 1 to {}, ~ after a held one: {1 4~}', 'corcheas de 1 a {1}, ~ detrás de la que se mantiene: {1 4~}'],
  [
    'beats 1 to {}, & for the eighth after, ~ for a held one: {}',
    'tiempos de 1 a {1}, & para la corchea que sigue, ~ para la que se mantiene: {2}',
  ],
  ['each hit once', 'cada corte una vez'],
  [':| before the next |:', ':| antes del |: siguiente'],
  [':| where the repeated passage ends, in the same section', ':| donde acaba el pasaje repetido, en la misma sección'],
  ['|: where the repeated passage begins, in the same section', '|: donde empieza el pasaje repetido, en la misma sección'],
  ['|: where the repeated passage begins, before its first ending', '|: donde empieza el pasaje repetido, antes de su primera casilla'],
  ['a bar between two |: signs', 'un compás entre dos signos |:'],
  ['{} to {}: how often the passage is played in all', 'de {1} a {2}: cuántas veces se toca el pasaje en total'],
  ['a repeat sign before the next ending, such as :|2.', 'un signo de repetición antes de la casilla siguiente, como :|2.'],
  ['endings numbered 1, 2, 3 … in their order, each number once', 'casillas 1, 2, 3 … en orden, cada número una vez'],
  ['a second ending: :|2. after the first', 'una segunda casilla: :|2. después de la primera'],
  ['{} somewhere in the chart, for {}', '{1} en algún lugar del cifrado, para {2}'],
  ['x for a stroke or . for a rest', 'x para un golpe o . para un silencio'],
  ['16 steps (two bars of eighths in 4/4) or 12 (6/8), found {}', '16 pasos (dos compases de corcheas en 4/4) o 12 (6/8); hay {1}'],
  [
    'chords such as Em7 A7 D6 B7b9, or a loop and a key such as 1 4 5 4 in D',
    'acordes como Em7 A7 D6 B7b9, o una vuelta y un tono como 1 4 5 4 in D',
  ],
  [
    'the chords as well, before or after the direction: Gm7 C7 Fmaj7 D7 montuno 2-3',
    'también los acordes, antes o después de la dirección: Gm7 C7 Fmaj7 D7 montuno 2-3',
  ],
  ['a degree: 1 to 7, or a roman numeral such as ii, V7, bVII', 'un grado: de 1 a 7, o en números romanos como ii, V7, bVII'],
];

const PATRONES = ESPERADO.map(([english, said]) => ({
  // A pair of braces with nothing in it stands for a piece; `{1 4~}` is text.
  pattern: new RegExp(
    `^${english
      .replace(/[.*+?^$()|[\]\\/]/g, '\\$&')
      .replaceAll('{}', '(.+?)')
      .replace(/\{(?=\d )/g, '\\{')}$`,
  ),
  said,
}));

/** What was expected, in Spanish; a text that is not known stays as it is. */
export function esperado(text: string): string {
  for (const { pattern, said } of PATRONES) {
    const match = pattern.exec(text);
    if (match) return said.replace(/\{(\d)\}/g, (_, piece: string) => esperado(match[Number(piece)] ?? ''));
  }
  return text;
}
