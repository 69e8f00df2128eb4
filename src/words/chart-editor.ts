/** What the chart editor says: its keys, what may be written at the caret, and taking changes back. */
export const CHART_EDITOR = {
  keysName: 'Signs to write',
  keys: {
    bar: 'barline',
    same: 'the bar before again',
    colon: 'colon, for repeats',
    hold: 'hold the chord one quarter',
    flat: 'flat',
    sharp: 'sharp',
    head: 'section head',
    hits: 'hits of the band',
  },
  undo: 'Undo',
  redo: 'Redo',
  transposeName: 'Write in another key',
  key: 'Key',
  halfStepLower: '−½, a half step lower',
  halfStepHigher: '+½, a half step higher',
  lower: '−½',
  higher: '+½',
  transposeAfterFaults: 'Once the faults are gone, the chart can be written in another key.',
  atCaretName: 'At the caret',
  couldBe: 'Could be',
  write: (text: string): string => `Write ${text}`,
  nothingAtCaret:
    'Begin a chord, and what it could be stands here. Hits: C7 {1 2& 4}. A bar of silence: stop. “Montuno 2-3” on your part: clave: 2-3.',
  asOnPaper:
    'What a part says in words, a chart writes so: “montuno 2-3” is clave: 2-3 on a line of its own, hits are C7 {1 2& 4}, a tag is [Tag] above its bars, a bar of silence is stop.',
} as const;
