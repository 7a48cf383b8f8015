// Before anything is painted: does this browser keep nothing yet, and does no address or message lead further? Then the
// first screen is the first thing to be painted.
//
// A classic script, which the browser waits for: a module comes after the first paint. `doorstep.js` begins what is tapped;
// a tap that comes before it is kept for it.

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
    let tapped = null;
    const keep = (event) => {
      const way = event.target.closest('[data-way]');
      if (!way) return;
      event.preventDefault();
      tapped = way;
    };
    document.addEventListener('click', keep);
    window.tappedBefore = () => {
      document.removeEventListener('click', keep);
      return tapped;
    };
  }
}
