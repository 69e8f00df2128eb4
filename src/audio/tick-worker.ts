/**
 * Ticks from a thread of its own, because timers of a hidden page are slowed down. Post the milliseconds between
 * ticks to start or change it, and 0 to pause it; every tick comes back as an empty message.
 */
let timer: ReturnType<typeof setInterval> | null = null;

addEventListener('message', ({ data }: MessageEvent<number>) => {
  if (timer !== null) clearInterval(timer);
  timer = data > 0 ? setInterval(() => postMessage(null), data) : null;
});
