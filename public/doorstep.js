// The first screen of a phone that keeps nothing yet, before the app is there. `index.html` holds it ready, `first.js` shows it.
//
// On a slow link the app takes seconds. Here every way in begins with the tap: the phone looks for its place, a file
// is chosen, a place is pasted. What comes of that is given to the app; any other tap is repeated on its namesake there.
//
// It is written in the phone's own letters, and so is the app's first picture: no word is drawn anew between the two. Ours
// swap in after that.

const FIX = { enableHighAccuracy: true, timeout: 30_000 };

/**
 * Takes its taps; `give` takes a text or a file for the app. Returns what the app's arrival calls, with the work that takes
 * the cover away: done at once, or once nobody is typing here any more.
 */
export function openDoorstep(give) {
  const doorstep = document.getElementById('doorstep');
  const [pasting, place, file] = ['pasting', 'pasted-place', 'project-file'].map((id) => document.getElementById(id));
  let wanted = null;
  let word = '';
  let leave = null;

  const begins = {
    // The app asks again; by then the phone has been allowed to, and knows.
    here: () => navigator.geolocation?.getCurrentPosition(() => {}, () => {}, FIX),
    open: () => file.click(),
    places(link) {
      want(null);
      link.hidden = true;
      pasting.hidden = false;
      place.focus();
    },
    read() {
      if (place.value.trim()) give(place.value);
      else location.hash = '#places';
    },
  };

  doorstep.addEventListener('click', (event) => {
    const tapped = event.target.closest('a, button');
    if (!tapped) return;
    const { way } = tapped.dataset;
    // A tab's address is for the app to read when it is there.
    if (way) event.preventDefault();
    begins[way]?.(tapped);
    if (way === 'places' || way === 'open') return;
    want(tapped);
    if (leave) go(leave);
  });
  file.addEventListener('change', () => {
    if (file.files[0]) give(file.files[0]);
  });
  window.tappedBefore()?.click();

  /** The last tap counts; it says so until the app is there. */
  function want(tapped) {
    if (wanted) say(wanted, null, word);
    wanted = tapped;
    word = tapped?.textContent;
    if (tapped) say(tapped, 'true', 'One moment');
  }

  function go(uncover) {
    uncover();
    requestAnimationFrame(() => requestAnimationFrame(() => document.documentElement.classList.remove('own-letters')));
    if (wanted?.dataset.way) document.querySelector(`main [data-way="${wanted.dataset.way}"]`)?.click();
  }

  return (uncover) => {
    if (pasting.hidden || wanted) go(uncover);
    else leave = uncover;
  };
}

/** A tab keeps its sign and its word. */
function say(control, busy, word) {
  control.ariaBusy = busy;
  if (control.dataset.way) control.textContent = word;
}
