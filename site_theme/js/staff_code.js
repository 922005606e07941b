/* Who is learning: a staff code, typed and never listed. It is remembered while this tab is open
   and no longer, so that the next person on a shared tablet starts as nobody. */
(function (Basinside) {
  'use strict';

  const PATTERN = /^[A-Z]{1,3}-[0-9]{2,4}$/;

  /** @type {string | null | undefined} */
  let code;
  /** @type {((code: string | null) => void)[]} */
  const listeners = [];

  function place() {
    return `basinside:${Basinside.page().handbook}:staff-code`;
  }

  /** @type {(use: (storage: Storage) => string | null | void) => string | null} */
  function inTab(use) {
    try {
      return use(window.sessionStorage) || null;
    } catch (error) {
      return null; // the browser blocks it: the code lasts as long as the page
    }
  }

  /**
   * The staff code in use, or null before one is chosen.
   * @returns {string | null}
   */
  function current() {
    if (code === undefined) {
      const found = inTab((storage) => storage.getItem(place()));
      code = found !== null && PATTERN.test(found) ? found : null;
    }
    return code;
  }

  /** @param {string | null} chosen */
  function use(chosen) {
    code = chosen;
    inTab((storage) =>
      chosen === null ? storage.removeItem(place()) : storage.setItem(place(), chosen)
    );
    listeners.forEach((tell) => tell(chosen));
  }

  /**
   * What was typed as a staff code, or null.
   * @param {string} typed
   * @returns {string | null}
   */
  function read(typed) {
    const tidy = typed.trim().toUpperCase().replace(/[\s\u2010-\u2015-]+/g, '-');
    const whole = tidy.replace(/^([A-Z]{1,3})([0-9])/, '$1-$2');
    return PATTERN.test(whole) ? whole : null;
  }

  /**
   * A line that says whose answers these are, and a way to say it.
   * @param {() => void} whenDeleted called after what this device keeps for the person is gone
   * @returns {HTMLElement}
   */
  function build(whenDeleted) {
    const { make, say } = Basinside;
    const root = make('div', { class: 'staff-code' });

    const rest = () => {
      const chosen = current();
      if (chosen === null) {
        const give = make('button', { type: 'button', click: ask }, say('staff-code.give'));
        root.replaceChildren(make('p', { class: 'who' }, say('staff-code.none')), give);
        return give;
      }
      /** @type {(key: string, click: () => void) => HTMLElement} */
      const button = (key, click) =>
        make('button', { type: 'button', click }, say(key, { code: chosen }));
      const summary = make('summary', {}, say('staff-code.is', { code: chosen }));
      const choices = make(
        'div', { class: 'choices-line' },
        button('staff-code.change', ask),
        button('staff-code.leave', leave),
        button('staff-code.delete', remove)
      );
      root.replaceChildren(make('details', {}, summary, choices));
      return summary;
    };

    const leave = () => {
      use(null);
      rest().focus();
    };

    const remove = async () => {
      const chosen = current();
      if (chosen === null || !window.confirm(say('staff-code.sure', { code: chosen }))) return;
      const store = await Basinside.store();
      await store.clear(Basinside.storeKey(chosen, ''));
      whenDeleted();
    };

    const ask = () => {
      const [field, help] = [Basinside.freshId('code'), Basinside.freshId('code-help')];
      const input = make('input', {
        id: field, type: 'text', size: 8, maxlength: 12, autocomplete: 'off', spellcheck: 'false',
        autocapitalize: 'characters', 'aria-describedby': help,
      });
      const told = make('p', { id: help, class: 'small' }, say('staff-code.help'));
      const form = make(
        'form',
        {
          novalidate: true,
          submit: (/** @type {Event} */ event) => {
            event.preventDefault();
            const chosen = read(input.value);
            if (chosen === null) {
              told.textContent = say('staff-code.wrong');
              input.setAttribute('aria-invalid', 'true');
              input.focus();
              return;
            }
            use(chosen);
            rest().focus();
          },
        },
        make('label', { for: field }, say('staff-code.label')),
        input,
        make('button', { type: 'submit', class: 'first' }, say('staff-code.use')),
        make('button', { type: 'button', click: () => rest().focus() }, say('staff-code.cancel')),
        told
      );
      root.replaceChildren(form);
      input.focus();
    };

    rest();
    return root;
  }

  Basinside.staffCode = Object.freeze({
    current,
    read,
    build,
    /** @param {(code: string | null) => void} tell */
    onChange: (tell) => listeners.push(tell),
  });
})(globalThis.Basinside = globalThis.Basinside || {});
