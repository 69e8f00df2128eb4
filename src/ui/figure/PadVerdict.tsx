import { claveMarks, exchanged, type Pad, padAlignment } from '../../layout/figure/rhythm-pad';
import type { Clave } from '../../vocabulary';
import { alignmentSentence } from '../../words/alignment-sentence';
import { PAD_WORDS } from '../../words/rhythm-pad';

/** What the rhythm states and why, and the same with its bars exchanged, drawn small. */
export function PadVerdict({ pad, clave }: { readonly pad: Pad; readonly clave: Clave }) {
  const found = padAlignment(pad, clave);
  const turned = exchanged(pad);
  const other = padAlignment(turned, clave);
  return (
    <div className="pad-verdict" aria-live="polite">
      <p>
        <strong>{found.verdict && PAD_WORDS.verdicts[found.verdict]}</strong> {alignmentSentence(found)}
      </p>
      <p className="pad-other">
        <span>{PAD_WORDS.other}</span>
        <MiniPad pad={turned} clave={clave} />
        <span>
          <strong>{other.verdict && PAD_WORDS.verdicts[other.verdict]}</strong> {alignmentSentence(other)}
        </span>
      </p>
      <p className="caption">{pad.length === 12 ? PAD_WORDS.sixEight : PAD_WORDS.source}</p>
    </div>
  );
}

/** Two bars in one line: strokes as dots, the clave as diamonds over them. */
function MiniPad({ pad, clave }: { readonly pad: Pad; readonly clave: Clave }) {
  const marks = claveMarks(clave);
  const half = pad.length / 2;
  return (
    <svg className="mini-pad" viewBox={`0 0 ${pad.length * 20 + 10} 40`} aria-hidden="true">
      {pad.map((role, step) => {
        const x = step * 20 + 10 + (step < half ? 0 : 10);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place
          <g key={step}>
            {marks[step] && <path className="mini-clave" d={`M${x} 4l6 6l-6 6l-6 -6z`} />}
            {role === '.' ? <circle className="mini-rest" cx={x} cy={29} r={2} /> : <circle className="mini-stroke" cx={x} cy={29} r={7} />}
          </g>
        );
      })}
      <path className="mini-bar" d={`M${half * 20 + 5} 2v36`} />
    </svg>
  );
}
