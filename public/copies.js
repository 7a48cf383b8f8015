// Finds the newest copy of each project that this browser keeps, without the compiled app.
//
// It trusts no layout: whatever lies under a key of ours, in local storage or in IndexedDB, is searched for
// objects that say they are a project. So it also works on what an older or a newer build has written, and a
// copy that no longer parses is handed out as it is. Read only.

const OURS = 'slantlight';
const FORMAT = 'slantlight-project';

/** `[{ name, text }]`, one per project, and one per piece that could not be read. */
export async function keptCopies() {
  const found = [];
  for (const value of [...localValues(), ...(await databaseValues())]) search(value, 0, found);
  return newest(found);
}

function localValues() {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(OURS)).map((key) => localStorage.getItem(key));
  } catch {
    return []; // Storage is blocked: nothing was kept there either.
  }
}

async function databaseValues() {
  try {
    const known = await indexedDB.databases();
    const names = known.map(({ name }) => name).filter((name) => name.startsWith(OURS));
    return (await Promise.all(names.map(allOf))).flat();
  } catch {
    return [];
  }
}

async function allOf(name) {
  const database = await settled(indexedDB.open(name));
  const stores = [...database.objectStoreNames];
  const values = [];
  for (const store of stores) {
    values.push(...(await settled(database.transaction(store).objectStore(store).getAll())));
  }
  database.close();
  return values;
}

function settled(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function search(value, revision, found) {
  if (typeof value === 'string') searchText(value, revision, found);
  else if (value instanceof Uint8Array) searchText(new TextDecoder().decode(value), revision, found);
  else if (value && typeof value === 'object') searchObject(value, revision, found);
}

function searchText(text, revision, found) {
  if (!text.includes(FORMAT)) return;
  try {
    search(JSON.parse(text), revision, found);
  } catch {
    found.push({ id: text, name: 'damaged copy', text, revision });
  }
}

function searchObject(object, revision, found) {
  if (object.format === FORMAT) {
    found.push({ id: object.id, name: object.title || 'project', text: JSON.stringify(object), revision });
    return;
  }
  // A record wraps its project and says how often it was written.
  const own = Number(object.revision ?? revision);
  for (const member of Object.values(object)) search(member, own, found);
}

function newest(found) {
  const byId = new Map();
  for (const copy of found) {
    if (!(byId.get(copy.id)?.revision > copy.revision)) byId.set(copy.id, copy);
  }
  return [...byId.values()].map(({ name, text }) => ({ name, text }));
}
