/** A trade word: its name, other spellings by which it is found in a sentence, and what it means. */
interface Entry {
  readonly name: string;
  /** Spellings that stand for it in sentences, lower case. */
  readonly also: readonly string[];
  readonly says: string;
}

const entry = (name: string, says: string, ...also: string[]): Entry => ({ name, also, says });

/** The glossary: trade words that the screens use, in a pianist's words. Common practice, no source, where nothing else is said. */
export const GLOSSARY_WORDS = {
  title: 'Words',
  close: 'Close',
  find: 'Find a word',
  none: (typed: string): string => `No word here has “${typed}” in it.`,
  seeAlso: 'See also',
  all: 'All words',
  found: (count: number): string => (count === 1 ? '1 word' : `${count} words`),
  /** The counts over a drawn rhythm, eighth by eighth. */
  counts: ['1', '&', '2', '&', '3', '&', '4', '&'],
  /** A drawn rhythm in words: a bar and the counts that are struck in it. */
  bar: (number: number, struck: readonly string[]): string => `bar ${number}: ${struck.join(', ')}`,
  words: {
    clave: entry(
      'clave',
      'The two-bar rhythm of five strokes that everything else leans on, and the two sticks that play it. Once a tune has begun it runs unbroken to the end.',
    ),
    'son clave': entry('son clave', 'The clave of son and salsa: the last stroke of its 3-side falls on 4.'),
    'rumba clave': entry(
      'rumba clave',
      'The clave of rumba, heard in songo and timba too: the last stroke of its 3-side comes an eighth later, on the & of 4.',
    ),
    direction: entry(
      'direction',
      'Which side of the clave a phrase begins on: 2-3 begins with the bar of two strokes, 3-2 with the bar of three. The clave itself does not turn; a section of an odd number of bars makes the next one begin on the other side.',
      '2-3',
      '3-2',
      'clave direction',
    ),
    'two-side': entry(
      '2-side',
      'The bar of the clave with two strokes, on 2 and 3. It settles on the beat, and the standard montuno strikes its 1.',
      'two-side',
    ),
    'three-side': entry(
      '3-side',
      'The bar of the clave with three strokes: 1, the & of 2, and 4. It pulls against the beat, and the standard montuno leaves its 1 out.',
      'three-side',
    ),
    crossed: entry(
      'crossed',
      'A part that states the side of the clave opposite to the one that sounds, mostly because it began one bar off. Players say cruzado.',
      'cruzado',
      'wrong side',
    ),
    neutral: entry('neutral', 'A rhythm whose two bars are alike: it fits either side of the clave and shows neither.', 'clave-neutral'),
    stroke: entry('stroke', 'One attack: of the clave, of a drum, or of the hands at the piano.', 'strokes'),
    bombo: entry('bombo', 'The second stroke of the 3-side, on the & of 2. Also the word for a bass drum.'),
    ponche: entry('ponche', 'The third stroke of the 3-side, on 4 (in rumba clave on the & of 4). Bands also call a written hit a ponche.'),
    tresillo: entry('tresillo', 'The three strokes of the 3-side taken as a rhythm of their own: 1, the & of 2, and 4.'),
    montuno: entry(
      'montuno',
      'The repeated piano figure, octaves and inner notes by turns; also the open section in which it is played and the coro answers.',
      'montunos',
    ),
    guajeo: entry(
      'guajeo',
      'A short figure repeated against the clave, on tres, strings, horns or piano. The montuno is the piano’s guajeo.',
      'guajeos',
    ),
    tumbao: entry(
      'tumbao',
      'The repeated part of the bass or the conga. The bass plays the & of 2 and 4, and its 4 is already the next bar’s root; in Cuba the piano’s own figure is called tumbao too.',
      'tumbaos',
    ),
    anticipation: entry(
      'anticipation',
      'Playing the next chord before its bar: the piano an eighth early, on the & of 4, the bass a beat early, on 4.',
      'anticipations',
      'anticipated',
      'taken early',
    ),
    octave: entry(
      'octave line',
      'The notes that the hand plays in octaves, thumb and fifth finger. Heard alone they are a slow tune, one step at a time.',
      'octave',
      'octaves',
    ),
    inner: entry('inner notes', 'The one or two chord notes between the two notes of the octave.', 'inner note'),
    voicing: entry(
      'voicing',
      'Which notes of a chord are played, and in which order from low to high.',
      'voicings',
      'hand shape',
      'hand shapes',
    ),
    guide: entry(
      'guide tones',
      'The third and the seventh of a chord. From chord to chord they move by a step or stay, and that makes the line.',
      'guide tone',
    ),
    approach: entry(
      'approach note',
      'A short note before a stroke that leads into it by step; several of them are the pickups of level 4.',
      'approach notes',
      'pickup',
      'pickups',
    ),
    line: entry(
      'moving line',
      'One voice that goes down or up by half steps while the chord is held, in minor most often 1, major 7, flat 7, 6.',
      'moving lines',
    ),
    cell: entry(
      'cell',
      'The rhythm of one bar for one side of the clave. One cell for the 2-side and one for the 3-side make a pattern.',
      'cells',
    ),
    figure: entry('figure', 'A rhythm with its notes: what the hands play over one clave cycle.', 'figures'),
    level: entry(
      'level',
      'How busy the figure is. 1 sparse, 2 standard, 3 with a moving line, 4 with pickups, 5 with chromatic approach notes, 6 riffs and bloques; “by section” plays softer under the verse and busier under coro and mambo.',
      'levels',
    ),
    device: entry(
      'device',
      'Something that is done to a figure for a while: an octave higher, octaves alone, an extra note. Clave and anticipations stay.',
      'devices',
    ),
    colour: entry(
      'colour',
      'How rich the chords are: plain stays with triads, sixths and sevenths as in son and salsa; jazz adds ninths and major sevenths.',
    ),
    riff: entry('riff', 'A short tune in octaves, played again and again with the clave, as horns do.', 'riffs'),
    bloque: entry(
      'bloque',
      'Whole chords in both hands on the strokes of the clave or of the horns; also a written passage of hits for the whole band.',
      'bloques',
    ),
    cascara: entry(
      'cáscara',
      'The two-bar rhythm on the shell of the timbales, heard under the verse. It shows which side of the clave is which.',
      'cascara',
      'shells',
    ),
    campana: entry(
      'campana',
      'The hand bell of the bongo player, from the montuno on: low on 1 and 3. Both its bars are alike, so it does not show the side.',
      'bongo bell',
      'cowbell',
    ),
    mamboBell: entry(
      'mambo bell',
      'The large bell of the timbales and its two-bar rhythm, under coro and mambo. It leaves out 1 of the 3-side.',
      'timbales bell',
    ),
    timbales: entry(
      'timbales',
      'A pair of metal drums with bells: shells under the verse, bell from the montuno on. The abanico is its roll into a section.',
      'abanico',
    ),
    conga: entry(
      'conga',
      'The tall drum. Its repeated part, tumbao or marcha, ends with two open tones on 4 and the & of 4.',
      'congas',
      'marcha',
    ),
    martillo: entry('martillo', 'The running eighths of the bongo under the verse.', 'bongo', 'bongó'),
    guiro: entry('güiro', 'A scraped gourd: in cha-cha-chá one long scrape and two short ones.', 'guiro'),
    coro: entry('coro', 'The refrain of the chorus in the montuno section; the lead singer answers it.'),
    mambo: entry('mambo', 'Inside a tune the section of the written horn riffs; also the big-band style.'),
    mona: entry('moña', 'Horn riffs laid one over the other, often made up on the spot.', 'moñas'),
    vamp: entry('vamp', 'A short loop of chords, repeated until somebody gives the cue to go on.', 'vamps', 'open section', 'cue'),
    cierre: entry('cierre', 'The closing figure of a section, played by all; after it the next section begins.', 'break'),
    hits: entry(
      'hits',
      'Written accents that the whole band strikes together. The montuno makes room for them.',
      'hit',
      'band hits',
      'band hit',
      'kick',
    ),
    stop: entry('stop', 'A bar in which everyone is silent. The clave goes on in the head.'),
    push: entry('push', 'A chord that the whole band strikes an eighth early, on the & of 4, and holds over the 1.', 'pushes'),
    section: entry(
      'section',
      'A part of a tune with a name: intro, verse, coro, mambo, solo, coda. What it is decides what piano and drums do there.',
      'sections',
    ),
    style: entry(
      'style',
      'The kind of dance a chart is in. It sets the bass, the drums, the usual tempo and how the piano plays.',
      'styles',
    ),
    son: entry('son', 'The Cuban song from which salsa grew. Son montuno is its form with an open refrain section.', 'son montuno'),
    salsa: entry(
      'salsa',
      'Dance music built on son montuno, usually 80 to 110 half notes a minute; guaracha is its faster neighbour.',
      'guaracha',
    ),
    chacha: entry(
      'cha-cha-chá',
      'A dance of medium tempo from the danzón: left hand on the beats, short right-hand chords between them.',
      'cha-cha-cha',
      'cha-cha',
    ),
    bolero: entry('bolero', 'A slow song: broken chords and fills, chords on the beat, nothing taken early.'),
    guajira: entry('guajira', 'A country song of slow to medium tempo: broken triads, mostly over I, IV and V7.'),
    songo: entry('songo', 'A Cuban style of the 1970s for drum set and congas, usually over rumba clave.'),
    timba: entry('timba', 'Cuban dance music since about 1990: a piano tumbao of its own for every song, over rumba clave.'),
    danzon: entry(
      'danzón',
      'An older Cuban ballroom dance, parent of mambo and cha-cha-chá, played by a charanga: flute, violins, piano and drums.',
      'danzon',
      'charanga',
    ),
    rumba: entry('rumba', 'Songs and dances over drums and sticks; guaguancó is the best known. It has a clave of its own.', 'guaguancó'),
    bembe: entry('bembé', 'Music in 6/8 with a bell of seven strokes. The clave has its two sides there too.', 'bembe', '6/8 bell'),
    cycle: entry('cycle', 'Once round the clave: two bars, one of each side.', 'clave cycle', 'cycles'),
    countin: entry('count-in', 'What sounds before the first bar, so that you come in with the clave.'),
    pulse: entry('pulse', 'The beat that the foot keeps: 1 and 3, or all four.', 'pulses'),
    tempo: entry('half notes', 'This music is felt in two: 90 half notes a minute are 180 quarter notes.', 'half note', 'cut time'),
    feel: entry(
      'feel',
      'Where the strokes lie between the beats. Eighths here are even, never swung; “as a son group plays” moves them by the few milliseconds that were measured.',
      'swing',
      'swung',
    ),
    loop: entry('loop', 'The bars that come round again and again until you let them go.', 'loops', 'looped'),
    pass: entry('pass', 'Once through the loop, or through the form.', 'passes'),
    take: entry('take', 'One attempt that is listened to, from the moment you come in until you stop.', 'takes'),
    ladder: entry('tempo ladder', 'Practising in small steps of tempo: up after clean passes, down after two that were not.'),
    scaffold: entry('scaffold', 'Guide tones and clave alone, for a solo line of your own on top.'),
  },
} as const;

/** The key of a trade word. */
export type WordId = keyof typeof GLOSSARY_WORDS.words;
