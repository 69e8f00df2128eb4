import type { FileKind } from '../../state/take-along/choices';
import type { Work } from '../../state/take-along/take-along';
import { TAKE_ALONG_WORDS } from '../../words/take-along';

/** What is being made and how far it is, or how the last file went, in one sentence. */
export function WorkLine(props: { readonly work: Work; readonly onCancel: () => void; readonly onAgain: (kind: FileKind) => void }) {
  const { work } = props;
  if (work.kind === 'working') {
    const { what, stage, share, file } = work;
    return (
      <div className="take-along-work" role="status">
        <p>{stage === 'sounds' ? TAKE_ALONG_WORDS.preparing : TAKE_ALONG_WORDS.working(what, share)}</p>
        <progress aria-label={TAKE_ALONG_WORDS.kinds[what]} max={1} value={stage === 'sounds' ? undefined : share} />
        <p className="take-along-hint take-along-inhand">{what === 'pack' ? file : ''}</p>
        <button type="button" className="key" onClick={props.onCancel}>
          {TAKE_ALONG_WORDS.cancel}
        </button>
      </div>
    );
  }
  if (work.kind === 'idle') return null;
  const fine = work.kind === 'done' || work.kind === 'cancelled';
  return (
    <div className={fine ? 'take-along-work' : 'take-along-work take-along-trouble'} role={fine ? 'status' : 'alert'}>
      <p>{sentence(work)}</p>
      {!fine && (
        <button type="button" className="key" onClick={() => props.onAgain(work.what)}>
          {TAKE_ALONG_WORDS.again}
        </button>
      )}
    </div>
  );
}

function sentence(work: Exclude<Work, { kind: 'idle' | 'working' }>): string {
  switch (work.kind) {
    case 'done':
      return TAKE_ALONG_WORDS.done(work.name, work.bytes);
    case 'cancelled':
      return TAKE_ALONG_WORDS.cancelled;
    case 'disk refused':
      return TAKE_ALONG_WORDS.diskRefused(work.reason);
    case 'no sounds':
      return TAKE_ALONG_WORDS.noSamples(work.reason);
    case 'failed':
      return TAKE_ALONG_WORDS.failed(work.reason);
  }
}
