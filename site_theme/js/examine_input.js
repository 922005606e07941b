/* How a record comes into the page that examines: a file, dropped or chosen, or pasted text. */
(function (Basinside) {
  'use strict';

  const LARGEST_BYTES = 1024 * 1024; // a record has a few thousand (our own cap)

  /**
   * The form for a record, the six words and the day.
   * @param {(given: {text: string, words: string, day: string}) => void} examine
   * @param {(key: string) => void} refuse
   * @returns {HTMLElement}
   */
  Basinside.examineForm = function (examine, refuse) {
    const { make, say } = Basinside;
    /** @type {(stem: string) => string} */
    const id = Basinside.freshId;
    const [file, text, words, day, help, dayHelp] = ['file', 'text', 'words', 'day', 'help', 'day'].map(id);

    const chosen = make('input', { id: file, type: 'file', accept: '.json,application/json' });
    const pasted = make('textarea', { id: text, spellcheck: 'false', rows: 6 });
    const typed = make('input', {
      id: words, type: 'text', autocomplete: 'off', autocapitalize: 'off', spellcheck: 'false',
      'aria-describedby': help,
    });
    const on = make('input', { id: day, type: 'date', required: true, 'aria-describedby': dayHelp });
    on.value = Basinside.day(new Date());

    const give = () => examine({ text: pasted.value, words: typed.value, day: on.value });

    /** @param {File | undefined} one */
    const take = async (one) => {
      if (!one) return;
      if (one.size > LARGEST_BYTES) return refuse('too-large');
      const bytes = await one.arrayBuffer();
      try {
        pasted.value = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
      } catch (error) {
        return refuse('not-utf8');
      }
      give();
    };
    chosen.addEventListener('change', () => {
      take(chosen.files[0]);
      chosen.value = ''; // the same file can be chosen again
    });

    const drop = make(
      'div',
      {
        class: 'drop',
        dragover: (/** @type {Event} */ event) => event.preventDefault(),
        drop: (/** @type {DragEvent} */ event) => {
          event.preventDefault();
          take(event.dataTransfer?.files[0]);
        },
      },
      make('label', { for: file }, say('examine.file')), chosen,
      make('p', { class: 'small' }, say('examine.drop'))
    );
    return make(
      'form',
      {
        class: 'examine-form', novalidate: true,
        submit: (/** @type {Event} */ event) => {
          event.preventDefault();
          give();
        },
      },
      make('div', { class: 'field' },
        make('label', { for: words }, say('examine.words')), typed,
        make('p', { class: 'small', id: help }, say('examine.words-help'))),
      make('div', { class: 'field' },
        make('label', { for: day }, say('examine.day')), on,
        make('p', { class: 'small', id: dayHelp }, say('examine.day-help'))),
      drop,
      make('div', { class: 'field' }, make('label', { for: text }, say('examine.text')), pasted),
      make('button', { type: 'submit', class: 'first' }, say('examine.examine'))
    );
  };
})(globalThis.Basinside = globalThis.Basinside || {});
