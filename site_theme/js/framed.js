/* A page inside another page's frame stops: whoever framed it could steer what is pressed.
   Only store.html may stand in a frame, and it does not load this file. */
(function (Basinside) {
  'use strict';

  Basinside.framed = window.top !== window.self;
  if (Basinside.framed) {
    window.stop();
    document.documentElement.replaceChildren();
  }
})(globalThis.Basinside = globalThis.Basinside || {});
