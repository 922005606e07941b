/* Shows what only today's date brings out, banners and single words: a built page has no clock. */
(function (Basinside) {
  'use strict';

  document.addEventListener('DOMContentLoaded', () => {
    if (Basinside.framed) return;
    const today = Basinside.day(new Date());
    for (const { anchor, after } of Basinside.page().dated) {
      const banner = document.getElementById(anchor);
      if (banner && today > after) banner.hidden = false;
    }
    for (const word of document.querySelectorAll('[data-after]')) {
      if (word instanceof HTMLElement) word.hidden = !(today > (word.dataset.after || today));
    }
  });
})(globalThis.Basinside = globalThis.Basinside || {});
