import { assess } from '../../src/practice/assess';
import { createClapOnsets } from '../../src/practice/clap-onsets';
import { matchTake } from '../../src/practice/match';
import { addClap, addNoise, addSpeech, type Room, randomOf, silence } from '../practice/rooms';
import { CHARTS, emptyTake, played } from '../practice/synthetic';
import { copyMs, LONG_TASK_MS, medianMs, ofBudget, overFloor, QUANTUM_FRAMES, type Results } from './measure';

const ROOM: Room = { rate: 48_000, seed: 11, reverbSeconds: 0.3, reverbLevel: 0.2 };
const SECONDS = 30;

/** Judging one pass as it ends, and ten minutes at once; and the clap detector over half a minute of a room with voices, in blocks as a worklet is handed them. */
export function measurePractice(): Results {
  const playing = { seed: 3, offsetMs: 20, spread: 0.1, missed: 0.1, extra: 0.1, wrong: 0.05, chordMs: 25 };
  const pass = played(emptyTake(CHARTS.vamp, { tempo: 90, passes: 2 }), playing).take;
  // Two bars at 90 half notes a minute last 2.67 s.
  const long = played(emptyTake(CHARTS.vamp, { tempo: 90, passes: 225 }), playing).take;
  const judge = (take: typeof pass) => assess(take, matchTake(take));
  const sound = silence(ROOM, SECONDS);
  const random = randomOf(ROOM);
  addNoise(sound, 0.003, random);
  addSpeech(sound, ROOM, 0.05, random);
  for (let at = 1; at < SECONDS - 1; at += 0.5) addClap(sound, ROOM, Math.round(at * ROOM.rate), 0.3, random);
  const clapsMs = medianMs(() => {
    const detector = createClapOnsets(ROOM.rate);
    for (let at = 0; at + QUANTUM_FRAMES <= sound.length; at += QUANTUM_FRAMES) detector.push(sound.subarray(at, at + QUANTUM_FRAMES), at);
  }, 15);
  const quantumMs = (1000 * QUANTUM_FRAMES) / ROOM.rate;
  return {
    judgePassMs: ofBudget(
      medianMs(() => judge(pass), 100),
      LONG_TASK_MS,
      'a long task on the page’s thread',
    ),
    judgeTenMinutesMs: medianMs(() => judge(long), 5),
    takeTenMinutesNotes: long.notes.length,
    clapMsPerQuantum: ofBudget(
      clapsMs / ((SECONDS * ROOM.rate) / QUANTUM_FRAMES),
      quantumMs,
      'the time in which the next 128 frames arrive',
    ),
    clapsTimesRealTime: (SECONDS * 1000) / clapsMs,
    clapsHalfMinuteMs: overFloor(clapsMs, copyMs(sound.byteLength), 'copying the same frames'),
  };
}
