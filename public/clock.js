// Looks at the clock while the page is seen, and tells the app only what is news: another minute, a time that runs not on
// but elsewhere (a clock that was set), and the instants for which it has asked. A page that is seen again is told at once,
// and a clock that was set is looked at in the next touch: who sets one has left the page for it.
//
// Here and not in the app, since a page at rest wakes for this alone: compiled code that has gone cold meanwhile costs
// several times as much to ask.

/** From one look to the next: what a clock that was set may stand wrong for while nobody touches the page. */
const LOOK = 5000;
/** What somebody does who is there. */
const TOUCHES = ['focus', 'pointerdown', 'keydown'];
/** Nothing is asked for more often. */
const SHORTEST = 50;
const MINUTE = 60_000;

/** Returns what asks to be told once it is later than an instant, in milliseconds since 1970. */
export function watchClock(tell) {
  let [told, wanted, timer] = [Date.now(), Infinity, 0];
  const isSeen = () => document.visibilityState === 'visible';
  const minute = (time) => Math.floor(time / MINUTE);

  function look(isSeenAnew) {
    const time = Date.now();
    if (isSeenAnew || time > wanted || minute(time) !== minute(told) || time < told) {
      [told, wanted] = [time, Infinity];
      tell();
    }
    wait();
  }

  function wait() {
    clearTimeout(timer);
    const time = Date.now();
    const next = Math.min(LOOK, MINUTE - (time % MINUTE), wanted + 1 - time);
    if (isSeen()) timer = setTimeout(() => look(false), Math.max(next, SHORTEST));
  }

  document.addEventListener('visibilitychange', () => (isSeen() ? look(true) : clearTimeout(timer)));
  for (const touch of TOUCHES) window.addEventListener(touch, () => look(false), { capture: true, passive: true });
  wait();
  return (at) => {
    wanted = Math.min(wanted, at);
    wait();
  };
}
