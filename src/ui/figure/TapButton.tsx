import { PAD_WORDS } from '../../words/rhythm-pad';

/** Takes taps by pointer, Space or Enter, with the time of each on the page's clock in milliseconds. */
export function TapButton({ onTap }: { readonly onTap: (at: number) => void }) {
  return (
    <button
      type="button"
      className="key"
      title={PAD_WORDS.tapHint}
      onPointerDown={(event) => onTap(event.timeStamp)}
      onKeyDown={(event) => {
        if (event.repeat || (event.key !== 'Enter' && event.key !== ' ')) return;
        // Taken here, so that Space neither presses the button again nor stops the music.
        event.preventDefault();
        onTap(event.timeStamp);
      }}
    >
      {PAD_WORDS.tap}
    </button>
  );
}
