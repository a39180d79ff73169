/**
 * When to act on a slider that moves: once a frame for the eye, once it rests for the ear.
 */

/** Runs the action once in the next frame, however often it is asked for. */
export function oncePerFrame(action: () => void): () => void {
  let waiting = false;
  return () => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => {
      waiting = false;
      action();
    });
  };
}

const REST_MS = 800;

/** Tells the last of several texts, once no other has come for a while. */
export function whenAtRest(tell: (text: string) => void): (text: string) => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return (text) => {
    clearTimeout(timer);
    timer = setTimeout(() => tell(text), REST_MS);
  };
}
