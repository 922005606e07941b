/* What the page brought along as inline JSON: about the handbook, and for each component. */
(function (Basinside) {
  'use strict';

  /**
   * About this page. `store` is the address of the store frame, relative to the page; `dated` are
   * hidden banners, each with the last day on which it may stay hidden.
   * @typedef {{handbook: string, edition: string, language: string, store: string,
   *   dated: {anchor: string, after: string}[]}} Page
   */

  /**
   * The parsed inline JSON of an id, or null when the page has none.
   * @param {string} id
   * @returns {any}
   */
  Basinside.inlineJson = function (id) {
    const found = document.getElementById(id);
    if (!found || found.getAttribute('type') !== 'application/json') return null;
    return JSON.parse(found.textContent || 'null');
  };

  /** @type {Page | null} */
  let known = null;

  /**
   * About this page, from the inline JSON `page`.
   * @returns {Page}
   */
  Basinside.page = function () {
    if (known === null) {
      const given = Basinside.inlineJson('page') || {};
      known = Object.freeze({
        handbook: String(given.handbook || ''),
        edition: String(given.edition || ''),
        language: String(given.language || document.documentElement.lang || ''),
        store: String(given.store || ''),
        dated: Array.isArray(given.dated) ? given.dated : [],
      });
    }
    return known;
  };

  /**
   * A civil day as it is written in files, by the reader's own calendar.
   * @param {Date} moment
   * @returns {string}
   */
  Basinside.day = function (moment) {
    const two = (/** @type {number} */ n) => String(n).padStart(2, '0');
    const year = String(moment.getFullYear()).padStart(4, '0');
    return `${year}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
  };
})(globalThis.Basinside = globalThis.Basinside || {});
