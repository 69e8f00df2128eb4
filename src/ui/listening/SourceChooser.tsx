import { LISTENING } from '../../words/listening';

const WAYS = ['midi', 'tap', 'keys', 'microphone', 'none'] as const;

/** What there is to play on; nothing is asked of the browser before one is touched. */
export function SourceChooser(props: { readonly onChoose: (way: (typeof WAYS)[number]) => void; readonly onClose: () => void }) {
  return (
    <div className="ways">
      <h2>{LISTENING.choose}</h2>
      {WAYS.map((way) => (
        <button key={way} type="button" className="key" onClick={() => props.onChoose(way)}>
          {LISTENING.sources[way]}
        </button>
      ))}
      <p className="caption">{LISTENING.intro}</p>
      <button type="button" className="key ways-close" onClick={props.onClose}>
        {LISTENING.close}
      </button>
    </div>
  );
}
