import { useEffect, useState } from 'react';
import type { SoundingBar } from '../../music/chart/chart';
import type { Stroke } from '../../vocabulary';

type Why = (stroke: Stroke, bars: readonly SoundingBar[]) => string;

/** The sentence-maker for strokes, fetched once the page stands; it says nothing until then. */
export function useWhy(): Why {
  const [why, setWhy] = useState<Why>(() => () => '');
  useEffect(() => {
    let here = true;
    import('../../words/why').then(
      ({ whyStroke }) => {
        if (here) setWhy(() => (stroke: Stroke, bars: readonly SoundingBar[]) => whyStroke(stroke, bars));
      },
      () => undefined,
    );
    return () => {
      here = false;
    };
  }, []);
  return why;
}
