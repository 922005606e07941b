// Tries every way we know by which a page can send something to a host, one after another.
// Used by test_nothing_leaves.py: it must reach the listener without the content policy (so that
// the test can fail), and must not with it. Its own address comes with the page.
'use strict';
(function () {
  const host = document.documentElement.dataset.host;
  const http = 'http://' + host + '/';
  const add = (name, members, where) => {
    const element = document.createElement(name);
    for (const [key, value] of Object.entries(members)) element.setAttribute(key, value);
    (where || document.body).append(element);
    return element;
  };
  const ways = {
    fetch: () => fetch(http + 'fetch', { mode: 'no-cors' }).catch(() => {}),
    xhr: () => { const x = new XMLHttpRequest(); x.open('GET', http + 'xhr'); x.send(); },
    beacon: () => navigator.sendBeacon(http + 'beacon', 'x'),
    socket: () => new WebSocket('ws://' + host + '/socket'),
    events: () => new EventSource(http + 'events'),
    image: () => { new Image().src = http + 'image'; },
    css: () => add('link', { rel: 'stylesheet', href: http + 'css' }, document.head),
    icon: () => add('link', { rel: 'icon', href: http + 'icon' }, document.head),
    manifest: () => add('link', { rel: 'manifest', href: http + 'manifest' }, document.head),
    prefetch: () => add('link', { rel: 'prefetch', href: http + 'prefetch' }, document.head),
    preload: () => add('link', { rel: 'preload', as: 'image', href: http + 'preload' }, document.head),
    module: () => add('link', { rel: 'modulepreload', href: http + 'module' }, document.head),
    background: () => { document.body.style.backgroundImage = 'url(' + http + 'background)'; },
    font: () => new FontFace('x', 'url(' + http + 'font)').load().catch(() => {}),
    script: () => add('script', { src: http + 'script' }),
    frame: () => add('iframe', { src: http + 'frame' }),
    object: () => add('object', { data: http + 'object' }),
    embed: () => add('embed', { src: http + 'embed' }),
    video: () => add('video', { src: http + 'video', preload: 'auto' }),
    audio: () => add('audio', { src: http + 'audio', preload: 'auto' }),
    form: () => {
      add('iframe', { name: 'target' });
      add('form', { action: http + 'form', target: 'target' }).submit();
    },
    worker: () => {
      const text = "fetch('" + http + "worker', { mode: 'no-cors' }).catch(() => {});";
      new Worker(URL.createObjectURL(new Blob([text], { type: 'text/javascript' })));
    },
  };
  for (const [name, way] of Object.entries(ways)) {
    try { way(); } catch (error) { console.warn(name, error.name); }
  }
  document.documentElement.dataset.tried = String(Object.keys(ways).length);
})();
