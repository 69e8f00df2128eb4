/** Calls `onFrame` once a drawn frame until the returned function is called. */
export function everyFrame(onFrame: () => void): () => void {
  let request = requestAnimationFrame(function frame() {
    request = requestAnimationFrame(frame);
    onFrame();
  });
  return () => cancelAnimationFrame(request);
}
