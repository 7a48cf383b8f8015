// Before anything is painted: does this browser keep nothing yet, and does no address or message lead further? Then the
// first screen is the first thing to be painted.
//
// A classic script, which the browser waits for: a module comes after the first paint. `doorstep.js` begins what is tapped.

{
  const keepsSomething = () => {
    try {
      return Object.keys(localStorage).some((key) => key.startsWith('slantlight'));
    } catch {
      return false; // Storage is blocked: nothing was kept there.
    }
  };
  if (!location.hash && !location.search && !keepsSomething()) {
    document.documentElement.classList.add('first-visit', 'own-letters');
  }
}
