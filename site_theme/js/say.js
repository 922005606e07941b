/* Every word of a script comes from the page's inline JSON `phrases`: {key: "text with {hole}"}. */
(function (Basinside) {
  'use strict';

  /** @type {Record<string, string> | null} */
  let phrases = null;

  /** @returns {Record<string, string>} */
  function known() {
    phrases = phrases || Basinside.inlineJson('phrases') || {};
    return phrases || {};
  }

  /**
   * Whether the page brought a phrase.
   * @param {string} key
   * @returns {boolean}
   */
  Basinside.hasPhrase = function (key) {
    return typeof known()[key] === 'string';
  };

  /**
   * The phrase of a key with its holes filled; a missing phrase is logged and shows as its key.
   * @param {string} key
   * @param {Record<string, string | number>} [holes]
   * @returns {string}
   */
  Basinside.say = function (key, holes) {
    const text = known()[key];
    if (typeof text !== 'string') {
      console.error('no phrase ' + key);
      return key;
    }
    const filled = holes || {};
    return text.replace(/\{([a-z_]+)\}/g, (whole, name) =>
      Object.hasOwn(filled, name) ? String(filled[name]) : whole
    );
  };
})(globalThis.Basinside = globalThis.Basinside || {});
