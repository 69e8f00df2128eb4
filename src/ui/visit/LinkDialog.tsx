import { useEffect, useRef } from 'react';
import type { LinkRoom, LinkState, Offer } from '../../state/link/link-room';
import { LINK_WORDS } from '../../words/link';
import { SCREEN } from '../../words/screen';

/** What a link holds, before anything is taken over; or why it cannot be opened. */
export function LinkDialog({ visit, room }: { readonly visit: Exclude<LinkState['visit'], { kind: 'none' }>; readonly room: LinkRoom }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  /** The link leaves the address, so that loading the page again does not bring it back. */
  const leaveAddress = (): void => {
    window.history.replaceState(null, '', '#/practise');
    window.dispatchEvent(new HashChangeEvent('hashchange'));
  };
  const leave = (): void => {
    leaveAddress();
    room.leave();
  };
  const take = (): void => {
    leaveAddress();
    room.take();
  };
  return (
    <dialog
      ref={dialog}
      className="link-dialog"
      aria-labelledby="link-name"
      onCancel={(event) => {
        event.preventDefault();
        leave();
      }}
    >
      <h2 id="link-name">{visit.kind === 'fault' ? LINK_WORDS.refused : LINK_WORDS.name}</h2>
      {visit.kind === 'fault' && <p>{LINK_WORDS.fault(visit.fault.code, visit.fault.found)}</p>}
      {visit.kind === 'offer' && <OfferFacts offer={visit.offer} />}
      <div className="link-acts">
        {visit.kind === 'offer' && (
          <button type="button" className="key link-take" onClick={take}>
            {LINK_WORDS.take}
          </button>
        )}
        <button type="button" className="key" onClick={leave}>
          {LINK_WORDS.leave}
        </button>
      </div>
    </dialog>
  );
}

function OfferFacts({ offer }: { readonly offer: Offer }) {
  const { settings, lesson } = offer;
  return (
    <>
      <p className="link-title">{offer.title}</p>
      <p className="caption">{offer.bars === null ? LINK_WORDS.faults(offer.faults) : LINK_WORDS.bars(offer.bars)}</p>
      {lesson.note !== '' && (
        <figure className="link-note">
          <figcaption>{LINK_WORDS.teacher}</figcaption>
          <blockquote>{lesson.note}</blockquote>
        </figure>
      )}
      <dl className="link-facts">
        {offer.key !== null && (
          <div>
            <dt>{LINK_WORDS.key}</dt>
            <dd>{offer.key}</dd>
          </div>
        )}
        <div>
          <dt>{LINK_WORDS.direction}</dt>
          <dd>
            {settings.direction} {settings.kind}
          </dd>
        </div>
        <div>
          <dt>{LINK_WORDS.level}</dt>
          <dd>
            {typeof settings.level === 'number' && `${settings.level} · `}
            {SCREEN.levels[settings.level]}
          </dd>
        </div>
        <div>
          <dt>{LINK_WORDS.tempo}</dt>
          <dd>{LINK_WORDS.tempoFacts(settings.tempo, settings.goalTempo)}</dd>
        </div>
      </dl>
      <p>{LINK_WORDS.untouched}</p>
    </>
  );
}
