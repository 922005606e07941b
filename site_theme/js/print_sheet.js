/* A button beside the hint of a sheet, which opens the browser's own printing. */
(function (Basinside) {
  'use strict';

  Basinside.component('print-sheet', function (container) {
    if (typeof globalThis.print !== 'function') return;
    const button = Basinside.make(
      'button',
      { type: 'button', click: () => globalThis.print() },
      Basinside.say('print.now')
    );
    container.append(' ', button);
  });
})(globalThis.Basinside = globalThis.Basinside || {});
