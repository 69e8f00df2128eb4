import { readMusicXml } from '../../exchange/musicxml/read-musicxml';
import { speakAs } from '../../exchange/speech';
import type { ReadScore, ScoreMessage } from './musicxml-messages';

/* Reads a score file in a thread of its own, so that a hostile or a very large one cannot hold the page up; to stop it, end the thread. */

const say = (message: ScoreMessage): void => postMessage(message);

addEventListener('message', async ({ data }: MessageEvent<ReadScore>) => {
  await speakAs(data.speech);
  const result = readMusicXml(data.bytes, data.name, (share) => say({ kind: 'progress', share }));
  say({ kind: 'done', result });
});
