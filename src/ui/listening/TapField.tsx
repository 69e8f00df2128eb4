import { createPortal } from 'react-dom';
import type { Listening } from '../../state/listening/listening-state';
import { inputMillis } from '../../vocabulary';
import { LISTENING } from '../../words/listening';

/** A wide field to tap the rhythm on, for a screen without a keyboard: above the transport, under the thumbs, on the line that takes its height from the board. */
export function TapField({ listening }: { readonly listening: Listening }) {
  const place = document.querySelector('.page-line') ?? document.body;
  return createPortal(
    <div className="tap-line">
      <button
        type="button"
        className="tap-field"
        onPointerDown={(event) => listening.tap(inputMillis(event.timeStamp))}
        onKeyDown={(event) => {
          if (event.repeat || (event.key !== 'Enter' && event.key !== ' ')) return;
          // Taken here, so that Space taps and does not stop the music.
          event.preventDefault();
          event.stopPropagation();
          listening.tap(inputMillis(event.timeStamp));
        }}
      >
        {LISTENING.tapHere}
      </button>
    </div>,
    place,
  );
}
