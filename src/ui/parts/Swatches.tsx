import { PARTS_WORDS } from '../../words/parts';

const COLOURS = [
  'paper',
  'sheet',
  'ink',
  'soft',
  'rule',
  'edge',
  'two',
  'two-head',
  'three',
  'hatch',
  'now',
  'nowink',
  'wood',
  'sea',
  'bass',
];
const SIZES = ['text-1', 'text-2', 'text-3', 'text-4', 'text-5'];
const SPACES = ['space-1', 'space-2', 'space-3', 'space-4', 'space-5', 'space-6'];

/** Every token of colour, type and space as it is in this theme. */
export function Swatches() {
  return (
    <>
      <h2>{PARTS_WORDS.colours}</h2>
      <div className="parts-row">
        {COLOURS.map((name) => (
          <figure key={name} className="parts-swatch">
            <i style={{ background: `var(--${name})` }} />
            <figcaption>{name}</figcaption>
          </figure>
        ))}
        <figure className="parts-swatch">
          <i style={{ background: 'var(--hatching) var(--three)' }} />
          <figcaption>hatching</figcaption>
        </figure>
      </div>
      <h2>{PARTS_WORDS.type}</h2>
      {SIZES.map((name) => (
        <p key={name} style={{ fontSize: `var(--${name})` }}>
          {name}: {PARTS_WORDS.sample}
        </p>
      ))}
      <h2>{PARTS_WORDS.space}</h2>
      {SPACES.map((name) => (
        <p key={name} className="parts-space">
          <i style={{ width: `var(--${name})` }} /> {name}
        </p>
      ))}
    </>
  );
}
