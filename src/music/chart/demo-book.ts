import { type Demo, demo, FIRST_DEMO } from './first-demo';

/** Six charts of the Quay Street Dance Band, a dance band that does not exist; the tunes are invented for the demo book. */
export const DEMO_BOOK: readonly Demo[] = [
  FIRST_DEMO,
  demo(
    'rain-on-the-slipway',
    'Rain on the Slipway',
    'A minor chord held for two bars and more: the line 1–maj7–♭7–6 falls inside it.',
    `
key: Em
clave: 3-2 son
tempo: half = 82
style: son montuno
; The chord stands still, the line walks:
; E, D sharp, D, C sharp.

[A, role: verse]
| Em | % | % | % |
| F#m7b5 | B7b9 | Em6 | % ||

[B, role: verse]
; here the same line is printed as chords
| Em | Em(maj7) | Em7 | Em6 |
| C6 | B7 | Em6 | B7b9 ||

[Coro, on cue]
| Em | B7 | B7 | Em |

form: A, A, B, A, Coro
`,
  ),
  demo(
    'harbour-lights-at-nine',
    'Harbour Lights at Nine',
    'Two chords in every bar: the octave changes on the & of 2 and the & of 4.',
    `
key: Eb
clave: 2-3 son
tempo: half = 86
style: mambo
; Each chord has two beats. Look one half
; bar ahead, never a whole one.

[Intro]
| Fm7 Bb7 | Gm7 C7b9 | Fm7 Bb7 | Eb6 Bb7 ||

[A, role: verse]
|: Eb6 C7b9 | Fm7 Bb7 | Gm7 C7b9 | Fm7 Bb7 |
| Bbm7 Eb7 | Ab6 Abm6 |1. Gm7 C7b9 | Fm7 Bb7 :|2. Fm7 Bb7 | Eb6 ||

[Mambo, x4]
| Eb6 Cm7 | Fm7 Bb7 |

[Coro, on cue]
| Eb Ab6 | Bb7 Ab6 |

form: Intro, A, Mambo, Coro
`,
  ),
  demo(
    'the-night-pilot',
    'The Night Pilot',
    'Minor iiø–V–i on rumba clave: ♭5 of the ii stays and becomes ♭9 of the V.',
    `
key: Cm
clave: 3-2 rumba
tempo: half = 88
style: songo
; D half-diminished: keep its A flat,
; it is the flat nine of G.

[A, role: verse]
| Dm7b5 | G7b9 | Cm6 | % |
| Dm7b5 | G7alt | Cm6 | % ||

[B, role: verse]
| Gm7b5 | C7b9 | Fm6 | % |
| Ab7 | % | Dm7b5 | G7b9 {1 2& 4&~} ||

[Coro, on cue]
| Cm | Bb | Ab7 | G7 |

form: A, A, B, A, Coro
`,
  ),
  demo(
    'quay-street-parade',
    'Quay Street Parade',
    'The commonest coro, I–IV–V–IV with two chords a bar, and a 6/9 tag with a tune on top.',
    `
key: A
clave: 2-3 son
tempo: half = 98
style: salsa

[Verse]
| A6 | F#m7 | Bm7 | E7 |
| A6 | F#m7 | Bm7 E7 | A6 ||

[Break]
| E7 {1 2& 4} | stop |

[Coro, x4, on cue]
; the band sings, the piano does not change
| A D | E7 D |

[Tag, role: coda]
; one chord, four bars: 5–6–5–6 above it
| A6/9 | % | % | A6/9 {1~} ||

form: Verse, Verse, Break, Coro, Tag
`,
  ),
  demo(
    'seven-planks-down',
    'Seven Planks Down',
    'A bridge of seven bars and a break of one: the coro comes in on the side where the tune began.',
    `
key: F
clave: 3-2 son
tempo: half = 94
style: guaracha
; Seven and one are eight. Without the
; break the coro would enter on the 2-side.

[A, role: verse]
| F6 | D7b9 | Gm7 | C7 |
| F6 | D7b9 | Gm7 C7 | F6 ||

[Bridge, role: verse]
| Bbmaj7 | Bbm6 | F6 | D7b9 |
| G7 | Gm7 | C7 {1 2& 4~} ||

[Break]
| stop |

[Coro, on cue, clave: 3-2]
| F | Bb | C7 | Bb |

form: A, A, Bridge, Break, Coro
`,
  ),
];
