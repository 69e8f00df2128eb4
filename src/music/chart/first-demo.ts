/** A chart of the demo book: invented, whole, and what it teaches in one line. */
export interface Demo {
  /** Begins with `demo-`. */
  readonly id: string;
  readonly title: string;
  readonly teaches: string;
  /** Chart text; `readChart` reads it. */
  readonly text: string;
}

/** Joins a title and the rest of a chart's text. */
export const demo = (id: string, title: string, teaches: string, rest: string): Demo => ({
  id: `demo-${id}`,
  title,
  teaches,
  text: `title: ${title}\n${rest.trim()}\n`,
});

/** The chart that lies ready when the page is opened for the first time. */
export const FIRST_DEMO: Demo = demo(
  'last-ferry',
  'Last Ferry',
  'ii–V–I through a whole AABA: 7 falls to 3, and one label holds from beginning to end.',
  `
key: D
clave: 2-3 son
tempo: half = 92
style: salsa
; Quay Street Dance Band, set two.
; All sections are even: count
; the side once and trust it.

[A, role: verse]
| Em7 | A7 | D6 | B7b9 |
| Em7 | A7b9 | D6/9 | % ||

[B, role: verse]
| Gmaj7 | Gm6 | F#m7 | B7b9 |
| E7 | % | Em7 | A7 ||

[Coro, on cue]
| Em7 | A7 | D6 | B7b9 |

form: A, A, B, A, Coro
`,
);
