import type { Performance } from '../../src/performance/performance';
import { assert } from '../../src/vocabulary';
import { assertUnbroken, BAR, everyStep, type PlayerClause, request, startedBy } from './player-bench';

/** Four bars, of which the last two are an open vamp; the strokes of its round are marked. */
function withVamp(): Performance {
  const form = everyStep(4);
  const round = everyStep(2, { fromBar: 2 });
  const marked = { ...round, events: round.events.map((event) => ({ ...event, midi: 72 })) };
  return { ...form, vamps: [{ fromTick: 3840, toTick: 7680, turns: [5760, 7200], round: marked }] };
}

const span = (from: number, to: number): number[] => Array.from({ length: to - from }, (_, index) => from + index);

/** What every Player must do with open vamps: the part of the contract that holds, cues and leaves them. */
export const VAMP_CLAUSES: readonly PlayerClause[] = [
  {
    title: 'holds an open vamp until it is cued, and leaves it with the strokes that lead on',
    async check(harness) {
      const form = withVamp();
      const { player } = harness;
      player.play(request(form));
      await startedBy(harness);
      assert(player.vamp() === null && player.cue() === null, 'no vamp is heard yet, so there is none to leave');
      await harness.wait(2.5 * BAR);
      assert(player.vamp()?.state === 'holding', `the vamp holds, got ${player.vamp()?.state}`);
      await harness.wait(2 * BAR);
      assert(player.heard()?.performance === form.vamps?.[0]?.round, 'its round is heard');
      const said = player.cue();
      assert(said === 'leaving' && player.vamp()?.state === 'leaving', `half a bar into a round it is left at its end, got ${said}`);
      await harness.wait(1.9 * BAR);
      assert(player.heard()?.performance === form && player.vamp() === null, 'then the form goes on');
      const sounds = harness.sounds();
      assertUnbroken(sounds);
      const steps = sounds.map(({ event }) => event.tick / 240);
      const expected = [...span(0, 32), ...span(16, 32), ...span(0, 32)].slice(0, steps.length);
      assert(steps.join() === expected.join(), `steps must be 0 to 31, 16 to 31, 0 and on, got ${steps.join()}`);
      const ofRound = sounds.flatMap(({ event }, index) => (event.midi === 72 ? [index] : []));
      assert(ofRound.join() === span(24, 40).join(), `strokes 24 to 39 are the round's, got ${ofRound.join()}`);
    },
  },
  {
    title: 'says one more round to a cue that comes when the strokes that lead back are on their way, and keeps its word',
    async check(harness) {
      const form = withVamp();
      const { player } = harness;
      player.play(request(form));
      await startedBy(harness);
      while ((player.heard()?.tick ?? 0) < 7300) await harness.wait(0.02);
      const said = player.cue();
      assert(
        said === 'one more round' && player.vamp()?.state === 'one more round',
        `after beat 4 it is too late for this round, got ${said}`,
      );
      await harness.wait(BAR);
      assert(player.vamp()?.state === 'leaving', 'the round after it is the last');
      assert(player.cue() === 'leaving', 'asking again changes nothing');
      await harness.wait(1.5 * BAR);
      assert(player.vamp() === null && player.heard()?.performance === form, 'then it is left');
      const steps = harness.sounds().map(({ event }) => event.tick / 240);
      assert(
        steps.join() === [...span(0, 32), ...span(16, 32), ...span(0, 32)].slice(0, steps.length).join(),
        'after exactly one more round',
      );
      assertUnbroken(harness.sounds());
    },
  },
  {
    title: 'lands a change made in an open vamp on the next cycle of the vamp and goes on holding it',
    async check(harness) {
      const { player } = harness;
      const next = withVamp();
      player.play(request(withVamp()));
      await startedBy(harness);
      while ((player.heard()?.tick ?? 0) < 4500) await harness.wait(0.02);
      const landing = player.change(next);
      assert(landing === 3840, `it lands where the vamp begins again, got ${landing}`);
      await harness.wait(2.4 * BAR);
      assert(player.heard()?.performance === next && player.vamp()?.state === 'holding', 'the new music is in the vamp and holds it');
      await harness.wait(2 * BAR);
      assert(player.heard()?.performance === next.vamps?.[0]?.round, 'its own round is heard');
      assertUnbroken(harness.sounds());
    },
  },
];
