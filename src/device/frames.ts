/** Calls `onFrame` once a drawn frame until the returned function is called. */
export function everyFrame(onFrame: () => void): () => void {
  let request = requestAnimationFrame(function frame() {
    request = requestAnimationFrame(frame);
    onFrame();
  });
  return () => cancelAnimationFrame(request);
}

/** A hidden page draws nothing: what waits for a frame waits this long there. */
const HIDDEN_MS = 100;

/** Calls `act` once when the next frame has been drawn, or after a tenth of a second where none is, until the returned function is called. */
export function afterFrame(act: () => void): () => void {
  let timer = setTimeout(act, HIDDEN_MS);
  const request = requestAnimationFrame(() => {
    clearTimeout(timer);
    timer = setTimeout(act);
  });
  return () => {
    cancelAnimationFrame(request);
    clearTimeout(timer);
  };
}
