/* Saving to a file: a download, and beside it the same text to copy, for browsers that keep
   downloads from pages on a stick. */
(function (Basinside) {
  'use strict';

  const KEPT_MS = 60000; // how long the browser may take to fetch the blob
  const COPY_ROWS = 8;

  /**
   * Whether this browser can write a file out of a page.
   * @returns {boolean}
   */
  function canSave() {
    return 'download' in HTMLAnchorElement.prototype && typeof URL.createObjectURL === 'function';
  }

  /**
   * @param {string} name
   * @param {string} text
   */
  function download(name, text) {
    const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
    const link = Basinside.make('a', { href: address, download: name });
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), KEPT_MS);
  }

  /**
   * Save a text, and show in `place` what was done and the text to copy.
   * @param {HTMLElement} place
   * @param {string} name a file name of plain letters
   * @param {string} text
   */
  function save(place, name, text) {
    const { make, say } = Basinside;
    const field = Basinside.freshId('copy');
    const area = make('textarea', { id: field, readonly: true, rows: COPY_ROWS, spellcheck: 'false' });
    area.value = text;
    area.addEventListener('focus', () => area.select());
    const told = make('span', { role: 'status' });
    const copy = make(
      'button',
      {
        type: 'button',
        click: async () => {
          area.focus();
          try {
            await navigator.clipboard.writeText(text);
            told.textContent = say('save.copied');
          } catch (error) {
            told.textContent = say('save.copy-yourself');
          }
        },
      },
      say('save.copy')
    );
    const can = canSave();
    const saved = make('p', { role: 'status', tabindex: -1 });
    const byHand = make(
      'details',
      { open: !can },
      make('summary', {}, say('save.by-hand')),
      make('label', { for: field }, say('save.text', { name })),
      area,
      make('p', { class: 'choices-line' }, copy, told)
    );
    place.replaceChildren(saved, byHand);
    if (can) download(name, text);
    saved.textContent = say(can ? 'save.done' : 'save.cannot', { name });
    saved.focus();
  }

  Basinside.saveFile = Object.freeze({ canSave, save });
})(globalThis.Basinside = globalThis.Basinside || {});
