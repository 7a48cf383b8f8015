// How long the sheet of a year takes, the whole page from the tap on, as the page itself measures it.

/** Goes to the sheet of a set-up and gives the milliseconds until its days are drawn. */
export function sheetTime(page, id) {
  return page.evaluate((id) => new Promise((drawn) => {
    const began = performance.now();
    const watch = new MutationObserver(() => {
      if (!document.querySelector('.year-paper path')) return;
      watch.disconnect();
      drawn(performance.now() - began);
    });
    watch.observe(document.body, { childList: true, subtree: true });
    location.hash = `#year/${id}`;
  }), id);
}
