import { useState } from 'react';
import type { LinkRoom, MadeLink } from '../../state/link/link-room';
import { LINK_WORDS } from '../../words/link';
import './link.css';

/** A link that was made, to be copied or read off the screen; or why it could not be made. */
export function MadeAddress({ made }: { readonly made: ReturnType<LinkRoom['make']> }) {
  if ('found' in made) return <p className="wrong">{LINK_WORDS.fault(made.code, made.found)}</p>;
  return <Address made={made} />;
}

function Address({ made }: { readonly made: MadeLink }) {
  const [copied, setCopied] = useState<boolean | null>(null);
  const { address, code } = made;
  const copy = async (): Promise<void> => {
    const written = navigator.clipboard?.writeText(address).then(
      () => true,
      () => false,
    );
    setCopied((await written) ?? false);
  };
  return (
    <>
      <div className="link-line">
        <input className="line-field" readOnly aria-label={LINK_WORDS.address} value={address} onFocus={(event) => event.target.select()} />
        <button type="button" className="key" onClick={() => void copy()}>
          {LINK_WORDS.copy}
        </button>
      </div>
      <p className="caption" role="status">
        {copied === null ? LINK_WORDS.size(address.length - address.indexOf('#'), 8192) : copied ? LINK_WORDS.copied : LINK_WORDS.notCopied}
      </p>
      {code === null && <p className="caption">{LINK_WORDS.noCode}</p>}
      {code && (
        <svg
          className="link-code"
          role="img"
          aria-label={LINK_WORDS.code}
          viewBox={`0 0 ${code.size} ${code.size}`}
          shapeRendering="crispEdges"
        >
          <rect width={code.size} height={code.size} fill="#fff" />
          <path d={code.path} fill="#000" />
        </svg>
      )}
    </>
  );
}
