// For checks of what the page says: it follows a frame or two after the hand.

const EVERY_MS = 100;
const TRIES = 40;

/** Tries until `check` does not fail. */
export async function eventually(check) {
  for (let tries = 0; ; tries++) {
    try {
      return await check();
    } catch (fault) {
      if (tries > TRIES) throw fault;
      await new Promise((done) => setTimeout(done, EVERY_MS));
    }
  }
}
