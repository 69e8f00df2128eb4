import { CHART_SCREEN } from '../../words/chart-screen';
import { LIBRARY_WORDS } from '../../words/library';
import { SAFETY_WORDS } from '../../words/safety';

/** One touch to what lies further down the Chart place, once it is `there`; the row has its room from the start. The headings take the focus, so that the Tab key goes on from there. */
export function PlaceSteps({ there }: { readonly there: boolean }) {
  const steps: readonly (readonly [heading: string, name: string])[] = [
    ['own-charts', LIBRARY_WORDS.yourCharts],
    ['demo-book', LIBRARY_WORDS.demoBook],
    ['set-lists', LIBRARY_WORDS.sets],
    ['safety', SAFETY_WORDS.name],
  ];
  const goTo = (id: string): void => {
    const heading = document.getElementById(id);
    heading?.scrollIntoView({ block: 'start' });
    heading?.focus({ preventScroll: true });
  };
  return (
    <nav className="place-steps" aria-label={CHART_SCREEN.onThisPlace}>
      {steps.map(([heading, name]) => (
        <button key={heading} type="button" className="plain" disabled={!there} onClick={() => goTo(heading)}>
          {name}
        </button>
      ))}
    </nav>
  );
}
