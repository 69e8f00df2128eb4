import type { PractiseBoardProps } from './board-props';

/**
 * The heart of the Practise place: the map of the form, the sounding card, the whole next card and the hand strip.
 * The height it fills is the window's less its own top and `--transport-height` (a length set in CSS; 100px when missing).
 */
export function PractiseBoard(props: PractiseBoardProps) {
  return (
    <section className="practise" aria-label={props.score.title}>
      {props.children}
    </section>
  );
}
