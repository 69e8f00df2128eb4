import { SCREEN } from '../../words/screen';

/** What stands where music would: one sentence and the way forward. */
export function NoMusic() {
  return (
    <div className="empty">
      <p>{SCREEN.noMusic}</p>
      <a href="#/chart">{SCREEN.goToChart}</a>
    </div>
  );
}
