/** What the page says about handing a chart over by link, and about opening one. */
export const LINK_WORDS = {
  make: 'Link for a student',
  makeHint: 'Chart, key, direction, level and tempo goal travel in the link itself. It goes through no server of ours.',
  note: 'Your words to the student',
  address: 'The link',
  copy: 'Copy the link',
  copied: 'Copied.',
  notCopied: 'The clipboard was refused: mark the link above and copy it.',
  code: 'The link as a QR code, to be read off this screen',
  noCode: 'Too long for a code that a camera could read from here; the link itself works.',
  size: (length: number, most: number): string => `${length} of ${most} characters.`,
  faulty: 'Once the faults in the chart are gone, a link can be made.',
  close: 'Close',

  name: 'A chart comes with this link',
  untouched: 'Nothing of yours has been changed. If you take it, it becomes one more chart on your shelf.',
  title: 'Title',
  bars: (bars: number): string => (bars === 1 ? '1 bar' : `${bars} bars`),
  faults: (faults: number): string => (faults === 1 ? 'one fault, marked in the text' : `${faults} faults, marked in the text`),
  key: 'Key',
  direction: 'Direction',
  level: 'Level',
  tempo: 'Tempo',
  tempoFacts: (tempo: number, goal: number): string => `half notes ${tempo} a minute, goal ${goal}`,
  teacher: 'From your teacher',
  take: 'Put it on my shelf',
  leave: 'Leave it',
  refused: 'This link cannot be opened',
  fault: (code: string, found: number): string => {
    switch (code) {
      case 'too long':
        return `It is ${found} characters long, expected at most 8192.`;
      case 'newer version':
        return `It is of version ${found}, expected version 1: load the page again to get a version that reads it.`;
      case 'too much inside':
        return `It would unpack to more than ${found} bytes, which no chart needs.`;
      case 'no lesson':
        return 'It holds something else, expected a chart with its settings.';
      default:
        return 'A part of it is missing or changed: ask for it once more, and copy it whole.';
    }
  },
  noteLine: (line: string): string => `; ${line}`,
} as const;
