/* Starts each component of the page where its container stands. One that fails is logged, and
   what stood in its container is put back, so that the page stays readable. */
(function (Basinside) {
  'use strict';

  /** @type {Map<string, (container: HTMLElement) => void>} */
  const starts = new Map();

  /**
   * Say how a component starts; `name` stands in `data-component` (or `data-start`).
   * @param {string} name
   * @param {(container: HTMLElement) => void} start
   */
  Basinside.component = function (name, start) {
    starts.set(name, start);
  };

  /** @param {HTMLElement} container */
  function startOne(container) {
    const name = container.dataset.component || container.dataset.start || '';
    const start = starts.get(name);
    if (!start) return;
    const before = [...container.childNodes];
    try {
      start(container);
    } catch (error) {
      console.error('component failed: ' + name, error);
      container.replaceChildren(...before);
    }
  }

  function startAll() {
    if (Basinside.framed) return;
    document.querySelectorAll('[data-component], [data-start]').forEach((each) => {
      startOne(/** @type {HTMLElement} */ (each));
    });
  }

  // Scripts are deferred, so every file of the bundle has run before this event.
  document.addEventListener('DOMContentLoaded', startAll);
})(globalThis.Basinside = globalThis.Basinside || {});
