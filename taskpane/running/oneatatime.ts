/** Runs a step never twice at once: calls that come meanwhile share one more run, which sees what they saw. */
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
