/* On first opening: what this browser can do for the handbook, and what to use instead. */
(function (Basinside) {
  'use strict';

  const READ = 'yes';

  /** @returns {Promise<boolean>} */
  async function canSign() {
    if (!Basinside.digest.canCheck()) return false;
    const curve = { name: 'ECDSA', namedCurve: 'P-256' };
    try {
      const pair = await crypto.subtle.generateKey(curve, false, ['sign', 'verify']);
      return Boolean(pair.privateKey);
    } catch (error) {
      return false;
    }
  }

  /**
   * What can be done, in the order in which it is shown.
   * @returns {Promise<{name: string, can: boolean}[]>}
   */
  async function look() {
    const store = await Basinside.store();
    return [
      { name: 'keep', can: store.works },
      { name: 'save', can: Basinside.saveFile.canSave() },
      { name: 'sign', can: await canSign() },
      { name: 'print', can: typeof window.print === 'function' },
    ];
  }

  /** @param {HTMLElement} container */
  async function show(container) {
    const { make, say } = Basinside;
    const store = await Basinside.store();
    const key = Basinside.storeKey('-', 'capability');
    const was = await store.get(key);
    if (was === READ) return;
    const found = await look();
    const whole = found.every((each) => each.can);
    const heading = Basinside.freshId('capability');
    const lines = found.map(({ name, can }) =>
      make(
        'li',
        {},
        make('b', {}, say(can ? 'capability.can' : 'capability.cannot')),
        make('span', {}, say(`capability.${name}${can ? '' : '.instead'}`))
      )
    );
    const close = async () => {
      container.replaceChildren();
      document.getElementById('main')?.focus();
      await store.put(key, READ, was);
    };
    const list = make('ul', {}, ...lines);
    const said = say(whole ? 'capability.whole' : 'capability.part');
    container.replaceChildren(
      make(
        'section',
        { class: 'capability', 'aria-labelledby': heading },
        ...(whole
          ? [make('details', {}, make('summary', { id: heading }, said), list)]
          : [make('h2', { id: heading }, said), list]),
        make('button', { type: 'button', click: close }, say('capability.close'))
      )
    );
  }

  Basinside.component('capability', (/** @type {HTMLElement} */ container) => {
    show(container).catch((error) => console.error('component failed: capability', error));
  });
})(globalThis.Basinside = globalThis.Basinside || {});
