import type { ClockMap } from '../../performance/clock-map';
import type { MarkerDelay } from '../../practice/marker-delay';
import type { InputMillis } from '../../vocabulary';
import type { Desk } from '../desk';
import type { Player } from '../ports';
import { createMarkers, isAudibleClick } from './markers';
import type { NoteSource, SoundOnItsWay } from './ports';

/** The band out of a loudspeaker, as the microphone of this take hears it. */
export interface Loudspeaker {
  begin(): void;
  /** Looks for the band's clicks in what `source` hears, until the returned function is called; a source that hands over no sound has none. */
  listenTo(source: NoteSource): () => void;
  clap(at: InputMillis): void;
  /** Looks for the clicks that are over; call it a few times a second. */
  measure(clocks: ClockMap | null): void;
  /** What the clicks of this take say; null where nobody listens to a loudspeaker, or none was looked for yet. */
  delay(): MarkerDelay | null;
}

/** Nothing heard; `hearsBand` tells whether a microphone hears the band out of a loudspeaker right now. */
export function createLoudspeaker(desk: Pick<Desk, 'desk' | 'warm'>, player: () => Player | null, hearsBand: () => boolean): Loudspeaker {
  const markers = createMarkers();
  let delay: MarkerDelay | null = null;

  /** A sound of the band is on its way: a click is something to measure by. */
  const expect = ({ event, at, countIn }: SoundOnItsWay): void => {
    const device = player();
    const music = device?.music();
    if (!music || !hearsBand()) return;
    if (!isAudibleClick(event, countIn, desk.desk.getState().settings.balance)) return;
    const click = device?.clickSound(event.drum ?? '');
    if (click) markers.expect(click, at, music.songZero);
  };
  /** Hears of the band's sounds, from when the player is there until the returned function is called. */
  const soundsFrom = (listener: (sound: SoundOnItsWay) => void): (() => void) => {
    let end: (() => void) | null = null;
    let wanted = true;
    void desk.warm().then(() => {
      if (wanted) end = player()?.onSound(listener) ?? null;
    });
    return () => {
      wanted = false;
      end?.();
    };
  };

  return {
    begin: markers.begin,
    listenTo(source) {
      if (!source.onHeard) return () => {};
      const endHearing = source.onHeard(markers.hear);
      const endSounds = soundsFrom(expect);
      return () => {
        endHearing();
        endSounds();
      };
    },
    clap: markers.clap,
    measure(clocks) {
      delay = clocks && hearsBand() ? markers.settle(clocks) : null;
    },
    delay: () => delay,
  };
}
