// The page that is shown when the app cannot start or has stopped: what happened in one plain sentence, the
// project's last copy as a file, and a report to copy. Made without the compiled app, which may be the thing
// that is broken. Sends nothing anywhere.

import { keptCopies } from './copies.js';

const SENTENCES = {
  engine: 'This browser cannot run WebAssembly, which Slantlight is made of. Update the browser, or open this address in another one.',
  load: 'A part of the app did not arrive whole. Look at the network and reload; what you have saved is safe.',
  panic: 'Something in the app went wrong and it stopped. Reload to go on from the last save.',
  promise: 'Something the app asked of the browser went wrong. You can go back to it, or reload to be sure.',
};

/** Shows the page once; what goes wrong afterwards is a consequence and would only bury the cause. */
export function showFailure({ kind, build, detail }) {
  if (document.getElementById('failure')) return;
  const hidden = [...document.body.children].filter((part) => !part.hidden);
  for (const part of hidden) part.hidden = true;
  const page = element('section', { id: 'failure', role: 'alert' }, [
    element('h1', { textContent: 'Slantlight has stopped' }),
    element('p', { textContent: SENTENCES[kind] }),
    button('Reload', () => location.reload()),
  ]);
  if (kind === 'promise') page.append(button('Back to the app', () => goBack(page, hidden)));
  page.append(...copiesPart(), ...reportPart(reportText(kind, build, detail)));
  document.body.append(page);
  page.querySelector('button').focus();
}

function goBack(page, hidden) {
  page.remove();
  for (const part of hidden) part.hidden = false;
}

function copiesPart() {
  const list = element('ul', {});
  const word = element('p', { textContent: 'Looking for the last copies of your projects …' });
  keptCopies().then((copies) => {
    word.textContent = copies.length === 0
      ? 'No project is kept in this browser.'
      : 'The last copies of your projects, to be opened again with “Open a project file”:';
    list.append(...copies.map((copy) => element('li', {}, [downloadLink(copy)])));
  });
  return [element('h2', { textContent: 'Your projects' }), word, list];
}

function downloadLink({ name, text }) {
  const href = URL.createObjectURL(new Blob([text], { type: 'text/plain' }));
  return element('a', { href, download: `${name}.txt`, textContent: `Save “${name}” as a file` });
}

function reportPart(text) {
  const box = element('textarea', { value: text, readOnly: true, rows: 8 });
  box.setAttribute('aria-label', 'Report');
  const copy = button('Copy the report', async () => {
    box.select();
    try {
      await navigator.clipboard.writeText(text);
      copy.textContent = 'Copied';
    } catch {
      copy.textContent = 'Selected: copy it from the box';
    }
  });
  const word = 'It names the browser and the fault. Nothing is sent unless you send it.';
  return [element('h2', { textContent: 'A report' }), element('p', { textContent: word }), box, copy];
}

function reportText(kind, build, detail) {
  return [`Slantlight ${build}`, new Date().toISOString(), navigator.userAgent, `what: ${kind}`, detail].join('\n');
}

function button(label, onTap) {
  const made = element('button', { type: 'button', textContent: label });
  made.addEventListener('click', onTap);
  return made;
}

function element(tag, properties, children = []) {
  const made = Object.assign(document.createElement(tag), properties);
  made.append(...children);
  return made;
}
