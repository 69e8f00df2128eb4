/** What the Play-along panel says. */
export const LISTENING = {
  title: 'Play along',
  intro: 'Play with the band, and be told what happened. Nothing you play leaves this device.',
  choose: 'What do you play on?',
  sources: {
    midi: 'MIDI keyboard',
    tap: 'Taps on this screen',
    keys: 'Computer keys',
    microphone: 'Claps, by microphone',
    none: 'I rate myself',
  },
  close: 'Close',
  stop: 'Stop listening',
  other: 'Another way to play',
  more: 'Device',
  again: 'Try again',
  /** Where the source stands. */
  asking: {
    midi: 'The browser asks whether this page may use MIDI.',
    keys: '',
    microphone: 'The browser asks whether this page may use the microphone.',
  },
  listening: {
    midi: (names: string): string => `Listening to ${names}`,
    keys: 'Listening to the computer’s keys',
    taps: 'Listening for your taps',
    microphone: 'Listening for claps',
  },
  noDevice: {
    midi: 'No MIDI keyboard is plugged in. Plug one in: it is found by itself. In Firefox, plug it in first and start the browser again.',
    keys: '',
    microphone: 'There is no microphone. Plug one in and try again.',
  },
  refused: {
    midi: 'MIDI was not allowed. Allow it at the left end of the address bar, then try again.',
    keys: '',
    microphone: 'The microphone was not allowed. Allow it at the left end of the address bar, then try again.',
  },
  missing: {
    midi: 'This browser has no MIDI. Chrome, Edge and Firefox on a computer have it. Taps, claps and computer keys work here.',
    keys: '',
    microphone: 'This browser gives this page no microphone. Taps and computer keys work everywhere.',
  },
  lost: (device: string): string =>
    `${device} is gone. What you held was let go; everything up to here is kept. Plug it in again, or go on another way.`,
  lostMicrophone: 'The microphone was taken away. Everything up to here is kept.',
  /** The microphone is there but hears nothing. */
  held: {
    muted: 'The microphone is muted by the system, or by a key of its own. Everything up to here is kept; unmute it, and it listens again.',
    asleep: 'The browser has put the microphone to sleep. Everything up to here is kept; one touch wakes it.',
  },
  wake: { muted: 'Ask for it again', asleep: 'Go on listening' },
  failed: (reason: string): string => `This did not open (${reason}).`,
  voiceProcessing:
    'This browser keeps its voice processing on, which swallows claps: trust the rhythm, not the milliseconds. Another browser, or tapping keys, is better.',
  headphones: 'I wear headphones',
  headphonesHint:
    'Out of a loudspeaker the microphone hears the band too: the percussion rests, so that only you clap. On a phone, opening the microphone may change the loudness.',
  /** What is played. */
  plays: 'You play',
  parts: { 'both hands': 'both hands', 'right hand': 'right hand', 'left hand': 'left hand', clave: 'the clave' },
  rhythmOnly: 'Only the rhythm is judged here; any key will do.',
  keysHint: 'The row under the digits plays from C4, the lowest row from C3; sharps lie between. Space still plays and stops.',
  rhythmKeys: 'Just tap the rhythm',
  octaveDown: 'Octave down',
  octaveUp: 'Octave up',
  soundsNotes: 'Sound what I play',
  soundsHint: 'For keyboards that are silent by themselves.',
  sendTo: 'Send the piano part to',
  sendNowhere: 'nowhere',
  sendHint: 'The page’s own piano still sounds; switch it off with Left and Right.',
  band: 'Band',
  pianoName: 'The band’s piano',
  pianos: { 'with me': 'plays with me', 'drops out': 'plays four bars, leaves me four', mine: 'is left to me' },
  claveFades: 'The clave fades as you go round',
  claveFadesHint: 'Sixteen bars of clave, then one bar in four, then none: you carry it.',
  clickName: 'Click',
  clicks: {
    'as set': 'as it is set',
    'every beat': 'on every beat',
    '2 and 4': 'on 2 and 4',
    '1 only': 'on 1 only',
    clave: 'the clave alone',
    'bombo only': 'the bombo alone',
  },
  tapHere: 'Tap here',
  /** Rounds. */
  ready: 'Press Play and join in.',
  running: 'Playing: you hear more after this pass.',
  silent: 'Nothing was heard in the last pass. Play a note: the lamp should light. If not, try another way to play.',
  tally: (passes: number, clean: number, inARow: number): string =>
    `${clean} of ${passes} passes clean${inARow > 1 ? `, the last ${inARow} in a row` : ''}`,
  showReport: 'What happened',
  partOnly: 'Only whole passes go into the journal.',
  hideReport: 'Hide',
  lamp: 'heard',
  /** The report. */
  report: 'What happened',
  pass: (pass: number, whole: boolean): string => (whole ? `Pass ${pass + 1}` : `Pass ${pass + 1}, part of it`),
  share: (right: number, asked: number): string => `${right} of ${asked} strokes right.`,
  clean: 'Clean.',
  inTime: 'In time.',
  noTiming: {
    coarse: 'This device tells its times only roughly, so early and late are not judged.',
    off: 'The sound goes out late or unevenly, as wireless headphones do: notes are judged, timing is not. A cable helps.',
  },
  wireless: 'Wireless output: timing is not judged. Loudspeakers or headphones with a cable bring it back.',
  unstable: 'The output’s delay wanders: timing is not judged. Close other programs, or use the built-in output.',
  jumped: 'The computer’s clock jumped during this pass, so it is not counted. Just go on.',
  microphoneAway: 'The microphone heard nothing for a part of this pass, so it is not counted. Just go on.',
  away: 'The page was out of sight during this pass, so it is not counted. Just go on.',
  /** The same bars as before, at a tempo of so many half notes or quarters a minute. */
  slower: (tempo: number): string => `Again, slower: ${tempo}`,
  /** The sentences look at more than the pass in the heading. */
  together: (passes: number): string => `What follows looks at your last ${passes} passes together.`,
  loopIt: (from: number, to: number): string => (from === to ? `Loop bar ${from}` : `Loop bars ${from} to ${to}`),
  replay: 'Hear your take with the clave',
  otherSide: 'Hear it on the other side',
  otherSideHint: 'Your own playing, moved by one bar: what crossed sounds like in your hands. The clave strokes that meet it are lit.',
  metClave: (met: number, of: number): string => `${met} of ${of} clave strokes meet a stroke of yours.`,
  replaying: { 'as played': 'This is your take; Stop ends it.', other: 'This is your take, crossed; Stop ends it.' },
  /** The picture. */
  picture: 'Where your strokes fell, step by step',
  pictureHint: 'A dot is the middle, its bar the spread. Up is early, down is late.',
  early: 'early',
  late: 'late',
  millis: (ms: number): string => `${ms} ms`,
  stepRow: (bar: 1 | 2, count: string, meanMs: number | null, spreadMs: number | null, played: number, missed: number): string =>
    [
      `Bar ${bar}, ${count}:`,
      meanMs === null ? `played ${played} times` : `${Math.abs(Math.round(meanMs))} ms ${meanMs < 0 ? 'early' : 'late'}`,
      spreadMs === null ? '' : `spread ${Math.round(spreadMs)} ms`,
      missed > 0 ? `missed ${missed} times` : '',
    ]
      .filter(Boolean)
      .join(' '),
  /** A step of a bar of `steps` as it is counted under the picture. */
  count: (step: number, steps: number): string => (steps === 6 ? String(step + 1) : step % 2 === 0 ? String(step / 2 + 1) : '&'),
  /** Marks on the grid: short enough for a step. */
  marks: {
    right: 'right',
    early: 'early',
    late: 'late',
    'wrong note': 'note',
    'wrong octave': 'octave',
    missed: 'missed',
    extra: 'extra',
  },
  /** A note of a stroke that did not sound, in the mark of the stroke. */
  without: (note: string): string => `no ${note}`,
  /** Playing a rhythm in. */
  playIn: 'Carry my rhythm through the chart',
  playedIn: 'Your rhythm, as it was heard',
  playedInHint: 'Look it over; a touch changes a step. Then it plays through every chord of the chart.',
  playedInFaults: {
    'nothing played': 'Nothing was heard to read. Play two bars on one chord, from the count-in on.',
    'one stroke': 'One stroke is no rhythm yet. Play two bars with at least two strokes.',
    'not on steps': 'What was played lies between the eighths. Play the two bars in even eighths with the click, a little slower.',
  },
  lineShape: {
    held: 'The outer line holds one note.',
    rising: 'The outer line rises.',
    falling: 'The outer line falls.',
    'up and down': 'The outer line goes up and comes down.',
    'down and up': 'The outer line goes down and comes up.',
    mixed: 'The outer line goes both ways.',
  },
  unsure: (places: string): string => `Between two steps, so look here: ${places}.`,
  /** A step of two bars. */
  place: (step: number, steps: number): string =>
    `bar ${step < steps / 2 ? 1 : 2}, ${steps === 12 ? (step % 6) + 1 : `${Math.floor((step % 8) / 2) + 1}${step % 2 ? ' and' : ''}`}`,
  backToReport: 'Back',
  /** Calibration. */
  calibrate: 'Measure this device’s delay',
  calibrateWhy:
    'Early and late can be told from the device’s own delay only when that is measured: tap along with sixteen clicks, ten seconds.',
  calibrateByEar:
    'Early and late can be told from the delay of loudspeaker and microphone only when that is measured: stay silent for ten seconds while the microphone listens to sixteen strokes. With headphones, clap along with them.',
  calibrating: 'Tap along with the clicks…',
  calibrated: (ms: number, spread: number): string => `Delay measured: ${Math.round(ms)} ms, give or take ${Math.round(spread)}.`,
  calibrationFailed: {
    'too few': 'Too few taps were heard. Play one note, or clap, with every click.',
    'off the clicks': 'The taps were even, but not with the clicks. Wait for the clicks, then tap with them.',
    'too uneven': 'The taps were too uneven to measure by. Take a breath and try again.',
  },
  /** What the take itself said of the way from loudspeaker to microphone. */
  loudspeaker: {
    measured: (ms: number, clicks: number): string =>
      `Your loudspeaker reaches the microphone after ${Math.round(ms)} ms. ${clicks} clicks of this take say so; it is taken off your claps.`,
    'not found':
      'The microphone did not hear enough of the clicks to measure its delay, so early and late are not judged. Turn the loudspeaker up and leave clave or click on.',
    scattered:
      'The clicks reached the microphone at delays that do not agree, so early and late are not judged. Wireless loudspeakers do that; a cable helps.',
  },
  /** Self-rating. */
  rateName: 'How was that pass?',
  ratings: { clean: 'Clean', nearly: 'Nearly', 'not yet': 'Not yet' },
  rateAdvice: {
    clean: 'Good. Once more, to be sure; after three of four, a little faster.',
    nearly: 'Loop the spot that shook, with a bar before it.',
    'not yet': 'Slower, or one hand, or half of it. Then again.',
  },
} as const;
