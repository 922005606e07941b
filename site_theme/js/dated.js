/* Shows the banners that only today's date brings out: a built page has no clock. */
(function (Basinside) {
  'use strict';

  document.addEventListener('DOMContentLoaded', () => {
    if (Basinside.framed) return;
    const today = Basinside.day(new Date());
    for (const { anchor, after } of Basinside.page().dated) {
      const banner = document.getElementById(anchor);
      if (banner && today > after) banner.hidden = false;
    }
  });
})(globalThis.Basinside = globalThis.Basinside || {});
