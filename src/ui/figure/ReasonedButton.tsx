import { useId } from 'react';

/** A button that stays in place when it can do nothing, and says why. */
export function ReasonedButton(props: {
  readonly label: string;
  readonly onPress: () => void;
  /** Why it can do nothing now; null when it can. */
  readonly reason?: string | null;
}) {
  const id = useId();
  const { reason = null } = props;
  return (
    <>
      <button
        type="button"
        className="key"
        aria-disabled={reason !== null}
        aria-describedby={reason === null ? undefined : id}
        title={reason ?? undefined}
        onClick={() => reason === null && props.onPress()}
      >
        {props.label}
      </button>
      {reason !== null && (
        <span id={id} hidden>
          {reason}
        </span>
      )}
    </>
  );
}
