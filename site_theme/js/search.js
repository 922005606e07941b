/* The page that finds: a box, and below it what its words find, by page and place. */
(function (Basinside) {
  'use strict';

  const PAGES_SHOWN = 20;
  const PLACES_SHOWN = 5;

  /**
   * One page with its places.
   * @param {any} index @param {any} found @param {boolean} whole
   */
  function result(index, found, whole) {
    const { make, say } = Basinside;
    const [href, name, kind] = index.pages[found.page];
    const shown = whole ? found.hits : found.hits.slice(0, PLACES_SHOWN);
    const left = found.hits.length - shown.length;
    return make(
      'li',
      {},
      make('a', { href, class: 'found' }, name),
      make('span', { class: 'kind' }, kind),
      make(
        'ul',
        {},
        ...shown.map((/** @type {any} */ hit) =>
          make('li', {}, make('a', { href: `${href}#${hit.anchor}` }, hit.title))
        ),
        ...(left > 0 ? [make('li', { class: 'more' }, say('search.more', { n: left }))] : [])
      )
    );
  }

  /** @param {HTMLElement} container */
  function start(container) {
    const { make, say } = Basinside;
    const index = Basinside.searchIndex;
    if (!index) return;
    const box = make('input', {
      type: 'search',
      id: Basinside.freshId('search'),
      autocomplete: 'off',
      spellcheck: 'false',
    });
    const told = make('p', { role: 'status', class: 'told' });
    const list = make('ol', { class: 'results' });
    const key = 'q';

    function look() {
      const query = box.value;
      const found = Basinside.search.find(index, query);
      const words = Basinside.search.folded(query);
      list.replaceChildren(
        ...found
          .slice(0, PAGES_SHOWN)
          .map((/** @type {any} */ each) => result(index, each, found.length === 1))
      );
      if (!words.length) told.textContent = say('search.ready');
      else if (!found.length) told.textContent = say('search.nothing', { query });
      else if (found.length > PAGES_SHOWN)
        told.textContent = say('search.many', { n: found.length, shown: PAGES_SHOWN });
      else told.textContent = say(found.length === 1 ? 'search.one' : 'search.some', { n: found.length });
    }

    box.addEventListener('input', () => {
      look();
      const mark = box.value ? `#${key}=${encodeURIComponent(box.value)}` : ' ';
      history.replaceState(null, '', mark.trim() || location.pathname);
    });
    const asked = new RegExp(`^#${key}=(.*)$`).exec(location.hash);
    if (asked) {
      try {
        box.value = decodeURIComponent(asked[1] || '');
      } catch {
        box.value = '';
      }
    }
    container.replaceChildren(
      make('label', { for: box.id }, say('search.label')),
      box,
      told,
      list
    );
    look();
    box.focus();
  }

  Basinside.component('search', start);
})(globalThis.Basinside = globalThis.Basinside || {});
