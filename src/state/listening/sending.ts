import { type ClockMap, toInput } from '../../performance/clock-map';
import { inputMillis } from '../../vocabulary';
import type { Desk } from '../desk';
import type { Player } from '../ports';
import type { InputDevice, NoteSink } from './ports';

/** Sends the arranged piano to a device that makes its own sound, each note at its moment. */
export interface Sending {
  /** From now on to `output`, or to none; what sounds where it was sent before ends. */
  to(output: InputDevice['id'] | null): void;
}

/** What sending asks of the world; `clocks` is the line from what is heard to the clock of the devices, null before it is known. */
export interface SendingPorts {
  readonly sink: NoteSink;
  readonly player: () => Pick<Player, 'onSound'> | null;
  readonly playing: Desk['playing'];
  readonly clocks: () => ClockMap | null;
}

/** Sends to nobody yet. */
export function createSending({ sink, player, playing, clocks }: SendingPorts): Sending {
  let end: (() => void) | null = null;
  return {
    to(output) {
      end?.();
      end = null;
      sink.silence();
      if (output === null) return;
      const endHearing = player()?.onSound(({ event, at, seconds, countIn }) => {
        const map = clocks();
        if (countIn || event.midi === null || !event.part.startsWith('piano') || !map) return;
        const from = toInput(map, at);
        sink.send(output, event.midi, event.velocity, from, inputMillis(from + seconds * 1000));
      });
      const endWatching = playing.subscribe((now) => {
        if (now.transport.kind === 'stopped') sink.silence();
      });
      end = () => {
        endHearing?.();
        endWatching();
      };
    },
  };
}
