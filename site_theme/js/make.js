/* Elements out of plain values. Text always becomes text nodes; nothing is ever parsed. */
(function (Basinside) {
  'use strict';

  /**
   * A new element.
   * @param {string} name
   * @param {Record<string, string | boolean | number | ((event: any) => void)>} [members]
   *   attributes; `true` sets an empty one, `false` none; a function listens to the event `name`
   * @param {...(Node | string)} inside
   * @returns {any}
   */
  Basinside.make = function (name, members, ...inside) {
    const element = document.createElement(name);
    for (const [key, value] of Object.entries(members || {})) {
      if (typeof value === 'function') element.addEventListener(key, value);
      else if (value === true) element.setAttribute(key, '');
      else if (value !== false) element.setAttribute(key, String(value));
    }
    element.append(...inside);
    return element;
  };

  /**
   * The nodes of a sentence: values as data elements, links with their words.
   * @param {string | Span[] | null | undefined} spans
   * @returns {Node[]}
   */
  Basinside.prose = function (spans) {
    if (!spans) return [];
    if (typeof spans === 'string') return [document.createTextNode(spans)];
    return spans.map((span) => {
      if (typeof span === 'string') return document.createTextNode(span);
      const { text, value, href } = span;
      const inner = value === undefined ? text : Basinside.make('data', { value }, text);
      if (href) return Basinside.make('a', { href, class: value !== undefined && 'to-value' }, inner);
      return typeof inner === 'string' ? document.createTextNode(inner) : inner;
    });
  };

  let made = 0;

  /**
   * An id that no other element of the page has.
   * @param {string} stem
   * @returns {string}
   */
  Basinside.freshId = function (stem) {
    made += 1;
    return `${stem}-${made}`;
  };
})(globalThis.Basinside = globalThis.Basinside || {});
