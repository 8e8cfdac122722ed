/** Never runs a step twice at the same time. Calls that come while it runs share one more run afterwards, so none is missed. */
export function oneAtATime(step: () => Promise<void>): () => Promise<void> {
  let running: Promise<void> | undefined;
  let following: Promise<void> | undefined;
  const start = () => {
    running = step().finally(() => {
      running = undefined;
    });
    return running;
  };
  return () => {
    if (!running) return start();
    following ??= running
      .catch(() => undefined)
      .then(() => {
        following = undefined;
        return start();
      });
    return following;
  };
}
