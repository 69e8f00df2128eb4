import { SCREEN } from '../../words/screen';
import { useDesk, useRun } from './desk-context';

/** The Sheet place until the sheet itself is joined in main. */
export function SheetPlace() {
  const run = useRun();
  const title = useDesk((state) => state.music?.score.title ?? '');
  return (
    <div className="empty">
      <h1>{title}</h1>
      <button type="button" className="key" onClick={() => run({ kind: 'save midi' })}>
        {SCREEN.saveMidi}
      </button>
    </div>
  );
}
