/**
 * Work that follows the frame in which an edit is first seen: what was typed and the large results
 * come first, everything else by the end of the next frame. Edits that come faster than frames do
 * not put it off.
 */
const waiting = new Set<() => void>();
let asked = false;

/** Do now what waits; paper has no next frame. */
export function doWaiting(): void {
  asked = false;
  const all = [...waiting];
  waiting.clear();
  for (const work of all) work();
}

/** Do `work` once the next frame is painted, unless what this returns is called before. */
export function afterPaint(work: () => void): () => void {
  waiting.add(work);
  if (!asked) {
    asked = true;
    requestAnimationFrame(afterThisFrame);
  }
  return () => waiting.delete(work);
}

/** A message is delivered once the frame being made is done; on a busy page the next may be first. */
function afterThisFrame() {
  let done = false;
  const once = () => {
    if (!done) doWaiting();
    done = true;
  };
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = once;
  port2.postMessage(null);
  requestAnimationFrame(once);
}
