import { assert, halfNotesPerMinute } from '../../src/vocabulary';
import { SON_3_2 } from '../performance/hand-made';
import { assertUnbroken, BAR, everyStep, music, type PlayerClause, request, startedBy, TEMPO } from './player-bench';
import { VAMP_CLAUSES } from './vamp-clauses';

/*
 * What every Player must do, whether it sounds or not. The silent recorder passes it in Node on a clock that is turned by hand;
 * the sounding player passes it in a browser in real time, so the music is fast and short.
 */

/** The contract, clause by clause; each gets a player that was stopped. */
export const PLAYER_CONTRACT: readonly PlayerClause[] = [
  {
    title: 'is stopped until Play and does nothing when asked to change',
    async check({ player, sounds }) {
      assert(player.heard() === null && player.transportState().kind === 'stopped', 'nothing may be heard');
      assert(player.change(everyStep(2)) === null, 'a change finds nothing to change');
      player.setTempo(halfNotesPerMinute(90));
      assert(sounds().length === 0, 'nothing may sound');
    },
  },
  {
    title: 'goes round a loop without losing or doubling its first or last stroke',
    async check(harness) {
      harness.player.play(request(everyStep(2, { fromBar: 2 })));
      await startedBy(harness);
      await harness.wait(4.5 * BAR);
      const sounds = harness.sounds();
      assert(sounds.length >= 35, `four bars and a half must have sounded, got ${sounds.length} strokes`);
      sounds.forEach(({ event, pass }, index) => {
        assert((event.tick - 3840) / 240 + pass * 16 === index, `stroke ${index} is tick ${event.tick} of pass ${pass}`);
      });
      assertUnbroken(sounds);
    },
  },
  {
    title: 'starts at any bar and comes round to the loop start as its second pass',
    async check(harness) {
      harness.player.play(request(everyStep(2), { fromTick: 1920 }));
      await startedBy(harness);
      await harness.wait(1.3 * BAR);
      assert(harness.sounds()[0]?.event.tick === 1920, 'the first stroke is that of the bar');
      const next = harness.sounds()[8];
      assert(next?.event.tick === 0 && next.pass === 1, 'after it comes the loop start');
    },
  },
  {
    title: 'counts in with clave on the side that leads into the music, and says so',
    async check(harness) {
      harness.player.play(request(everyStep(2), { countInBars: 1 }));
      await startedBy(harness);
      assert(harness.player.transportState().kind === 'counting in', 'the count-in is announced');
      const left = harness.player.heard()?.countIn;
      assert(left === 4, `four beats are left, got ${left}`);
      await harness.wait(1.3 * BAR);
      assert(harness.player.transportState().kind === 'playing', 'then the music');
      const first = music(harness.sounds())[0]?.at ?? 0;
      const clave = harness.sounds().filter(({ countIn, event }) => countIn && event.drum === 'clave');
      // Son clave's 3-side leads into 2-3: strokes on 1, the & of 2, and 4.
      assert(clave.map(({ at }) => Math.round((first - at) / (BAR / 8))).join() === '8,5,2', 'the 3-side leads into a 2-3 loop');
    },
  },
  {
    title: 'lands a change on the next cycle without a gap and shows it only from there',
    async check(harness) {
      const [old, next] = [everyStep(4), everyStep(4, { clave: SON_3_2 })];
      harness.player.play(request(old));
      await startedBy(harness);
      await harness.wait(0.5 * BAR);
      const landing = harness.player.change(next);
      assert(landing === 3840, `it lands two bars in, got ${landing}`);
      assert(harness.player.heard()?.performance === old, 'the old music is heard until then');
      await harness.wait(1.8 * BAR);
      assert(harness.player.heard()?.performance === next, 'the new music is heard from then on');
      assertUnbroken(harness.sounds());
    },
  },
  {
    title: 'takes a new tempo without losing, doubling or turning back',
    async check(harness) {
      harness.player.play(request(everyStep(2)));
      await startedBy(harness);
      for (let tempo = TEMPO; tempo > TEMPO - 12; tempo -= 1) {
        harness.player.setTempo(halfNotesPerMinute(tempo));
        await harness.wait(0.1);
      }
      harness.sounds().forEach(({ event, pass, at }, index) => {
        assert(event.tick / 240 + pass * 16 === index, `stroke ${index} is tick ${event.tick} of pass ${pass}`);
        assert(index === 0 || at > (harness.sounds()[index - 1]?.at ?? 0), 'time never turns back');
      });
    },
  },
  {
    title: 'ends an open form by itself',
    async check(harness) {
      harness.player.play(request(everyStep(1, { closed: false })));
      await startedBy(harness);
      await harness.wait(BAR + 0.6);
      assert(harness.player.transportState().kind === 'stopped' && harness.player.heard() === null, 'it must have stopped');
      assert(harness.sounds().length === 8, 'the bar sounded once');
    },
  },
  {
    title: 'hands nothing over after Stop',
    async check(harness) {
      harness.player.play(request(everyStep(2)));
      await startedBy(harness);
      harness.player.stop();
      const count = harness.sounds().length;
      assert(harness.player.transportState().kind === 'stopped', 'it says that it stopped');
      await harness.wait(0.4);
      assert(harness.sounds().length === count, 'nothing more may be handed over');
    },
  },
  {
    title: 'survives quick stops and starts: every start begins at its first stroke',
    async check(harness) {
      for (let round = 0; round < 10; round += 1) {
        const before = harness.sounds().length;
        harness.player.play(request(everyStep(2)));
        await startedBy(harness);
        const first = harness.sounds()[before];
        assert(first?.event.tick === 0 && first.pass === 0, 'a start begins at its first stroke');
        harness.player.stop();
      }
    },
  },
  {
    title: 'tells its listeners of states, not of frames',
    async check(harness) {
      let told = 0;
      const leave = harness.player.onChange(() => {
        told += 1;
      });
      harness.player.play(request(everyStep(2)));
      await startedBy(harness);
      await harness.wait(BAR);
      const whilePlaying = told;
      harness.player.stop();
      leave();
      harness.player.play(request(everyStep(2)));
      assert(whilePlaying > 0 && whilePlaying <= 6, `a start is a few changes, got ${whilePlaying}`);
      assert(told === whilePlaying + 1, 'Stop is one change, and who left hears no more');
    },
  },
  {
    title: 'refuses a start inside a bar at once',
    async check({ player }) {
      let message = '';
      try {
        player.play(request(everyStep(2), { fromTick: 100 }));
      } catch (error) {
        message = String(error);
      }
      assert(message.includes('100'), 'a wrong start throws with its value');
    },
  },
  ...VAMP_CLAUSES,
];
