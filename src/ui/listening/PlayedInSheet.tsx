import { useState } from 'react';
import { emptyPad, padFrom, padIn, padText } from '../../layout/figure/rhythm-pad';
import type { PlayedFigure } from '../../state/listening/played-figure';
import type { Clave } from '../../vocabulary';
import { LISTENING } from '../../words/listening';
import { PAD_WORDS } from '../../words/rhythm-pad';
import { useDesk, useRun } from '../app/desk-context';
import { PadDrawing } from '../figure/PadDrawing';
import { PadVerdict } from '../figure/PadVerdict';

/** A rhythm that was played in, on the grid: looked at, mended with a touch, and carried through the chart when the player says so. */
export function PlayedInSheet({ played, onClose }: { readonly played: PlayedFigure; readonly onClose: () => void }) {
  if (played.kind === 'fault') {
    return (
      <div className="played-in">
        <p role="alert">{LISTENING.playedInFaults[played.code]}</p>
        <button type="button" className="key" onClick={onClose}>
          {LISTENING.backToReport}
        </button>
      </div>
    );
  }
  return <Confirm figure={played.figure} onClose={onClose} />;
}

function Confirm(props: { readonly figure: Extract<PlayedFigure, { kind: 'read' }>['figure']; readonly onClose: () => void }) {
  const { figure, onClose } = props;
  const run = useRun();
  const { direction, kind, tempo } = useDesk((state) => state.settings);
  const steps = figure.text.length === 13 ? 12 : 16;
  const [drawn, setDrawn] = useState(() => padIn(padFrom(figure.text, steps) ?? emptyPad(steps), figure.direction, direction));
  const clave: Clave = { kind: steps === 12 ? 'bembe' : kind, direction };
  return (
    <section className="played-in rhythm-pad" aria-label={LISTENING.playedIn}>
      <h3>{LISTENING.playedIn}</h3>
      <p className="caption">{LISTENING.playedInHint}</p>
      <PadDrawing pad={drawn} clave={clave} tapsFrom={null} stepMillis={15_000 / tempo} onDraw={setDrawn} />
      <p>
        {LISTENING.lineShape[figure.line.shape]}{' '}
        {figure.unsure.length > 0 && LISTENING.unsure(figure.unsure.map((step) => LISTENING.place(step, steps)).join(', '))}
      </p>
      <PadVerdict pad={drawn} clave={clave} />
      <div className="report-heard">
        <button
          type="button"
          className="key"
          onClick={() => {
            run({ kind: 'set', settings: { ownFigure: { text: padText(drawn), direction } } });
            onClose();
          }}
        >
          {PAD_WORDS.use}
        </button>
        <button type="button" className="key" onClick={onClose}>
          {LISTENING.backToReport}
        </button>
      </div>
    </section>
  );
}
