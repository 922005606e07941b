/* Times at the steps and the strip that shows them all: names, out-times, alarm, interruptions. */
(function (Basinside) {
  'use strict';

  const TICK = 1000;
  const AGAIN = 10; // seconds between the alarm's sounds
  const TONE_HZ = 880;

  /** @type {AudioContext | null} */
  let audio = null;

  function wakeSound() {
    if (audio || typeof AudioContext !== 'function') return;
    audio = new AudioContext();
  }

  function sound() {
    if (!audio || audio.state !== 'running') return;
    for (const [n, length] of [[0, 0.18], [0.28, 0.18], [0.56, 0.4]]) {
      const tone = audio.createOscillator();
      const loud = audio.createGain();
      tone.frequency.value = TONE_HZ;
      loud.gain.value = 0.25;
      tone.connect(loud).connect(audio.destination);
      tone.start(audio.currentTime + (n || 0));
      tone.stop(audio.currentTime + (n || 0) + (length || 0));
    }
  }

  /** @param {number} now @param {number} moment */
  function clockWords(now, moment) {
    const { clock, midnights } = Basinside.timing;
    const days = midnights(now, moment);
    const time = clock(moment);
    if (days === 1) return Basinside.say('timer.tomorrow', { time });
    if (days === -1) return Basinside.say('timer.yesterday', { time });
    return days === 0 ? time : Basinside.say('timer.days', { time, n: days });
  }

  /**
   * The words of one time: what it is now, and what to do.
   * @param {any} timer @param {any} about @param {number} now
   */
  function told(timer, about, now) {
    const { say } = Basinside;
    const reading = Basinside.timing.read(timer, now);
    const holes = {
      began: clockWords(now, timer.began),
      out: clockWords(now, reading.out),
      latest: reading.latest === null ? '' : clockWords(now, reading.latest),
      left: Basinside.timing.counted(reading.left),
      broken: timer.broken === null ? '' : clockWords(now, timer.broken),
      pause: Basinside.timing.counted(timer.paused || 0),
    };
    const pausing = reading.state === 'interrupted' && timer.goesOn;
    const lines = [say(pausing ? 'timer.pause' : `timer.${reading.state}`, holes)];
    if (reading.state !== 'interrupted' && timer.paused) lines.push(say('timer.paused', holes));
    if (reading.state === 'running' || reading.state === 'reached') {
      lines.push(say('timer.log', holes));
      if (reading.latest !== null) lines.push(say('timer.latest', holes));
    }
    if (reading.state === 'interrupted') {
      const told = about && about.interrupted;
      if (told || !pausing) lines.push(told || say('timer.again'));
    }
    return { state: reading.state, lines, left: holes.left };
  }

  /**
   * One time with its buttons.
   * @param {any} timer @param {any} about @param {any} keeper @param {string} href
   */
  function card(timer, about, keeper, href) {
    const { make, say } = Basinside;
    const now = Date.now();
    const said = told(timer, about, now);
    const set = (/** @type {any} */ change) => () =>
      keeper.change((/** @type {any[]} */ all) =>
        all.map((each) => (each.id === timer.id ? { ...each, ...change() } : each))
      );
    const away = () =>
      keeper.change((/** @type {any[]} */ all) => all.filter((each) => each.id !== timer.id));
    const again = set(() => ({ began: Date.now(), broken: null, paused: 0 }));
    const on = set(() => Basinside.timing.resumed(timer, Date.now()));
    const broken = set(() => ({ broken: Date.now() }));
    const button = (/** @type {string} */ key, /** @type {() => void} */ click) =>
      make('button', { type: 'button', click, 'data-deed': key }, say(`timer.do.${key}`, { name: timer.name }));
    const buttons = {
      running: [button('broken', broken), button('out', away)],
      reached: [button('out', away)],
      'too-long': [button('out', away)],
      interrupted: [
        ...(timer.goesOn ? [button('on', on)] : []),
        button('again', again),
        button('drop', away),
      ],
      'clock-changed': [button('again', again), button('drop', away)],
    }[said.state];
    return make(
      'div',
      { class: `time ${said.state}`, 'data-timer': timer.id },
      make('p', { class: 'time-name' }, href ? make('a', { href }, timer.name) : timer.name),
      make('p', { class: 'time-left', 'aria-hidden': 'true' }, said.state === 'running' ? said.left : ''),
      ...said.lines.map((line) => make('p', {}, line)),
      make('p', { class: 'time-deeds' }, ...buttons)
    );
  }

  /**
   * Draw times again when they change, and once a second what is left; buttons keep the focus.
   * @param {any} keeper @param {() => void} draw @param {() => any[]} mine
   */
  function keepDrawn(keeper, draw, mine) {
    const seen = () =>
      JSON.stringify(mine().map((each) => [each, Basinside.timing.read(each, Date.now()).state]));
    let last = '';
    const tick = () => {
      const now = seen();
      if (now !== last) {
        last = now;
        draw();
      }
    };
    keeper.listen(tick);
    setInterval(tick, TICK);
    tick();
  }

  /** @param {HTMLElement} container @param {any[]} timers */
  function countDown(container, timers) {
    for (const each of timers) {
      const place = container.querySelector(`[data-timer="${CSS.escape(each.id)}"] .time-left`);
      const reading = Basinside.timing.read(each, Date.now());
      const text = reading.state === 'running' ? Basinside.timing.counted(reading.left) : '';
      if (place && place.textContent !== text) place.textContent = text;
    }
  }

  /** @param {HTMLElement} container */
  async function atStep(container) {
    const { make, say } = Basinside;
    const known = Basinside.inlineJson('timers') || { steps: {} };
    const step = container.dataset.step || '';
    const about = known.steps[step];
    if (!about) return;
    const path = `${known.procedure}/${step}`;
    const keeper = await Basinside.timers();
    const mine = () => keeper.value().filter((/** @type {any} */ each) => each.step === path);
    const name = make('input', { type: 'text', id: Basinside.freshId('time'), maxlength: Basinside.timing.LONGEST_NAME, autocomplete: 'off' });
    const list = make('div', { class: 'times' });
    const full = make('p', { role: 'status' });
    const named = (/** @type {string} */ what) => (mine().length ? `${what} (${mine().length + 1})` : what);
    const begin = () => {
      wakeSound();
      if (keeper.value().length >= Basinside.timing.MOST) {
        full.textContent = say('timer.full', { n: Basinside.timing.MOST });
        return;
      }
      const timer = {
        id: `t${Date.now()}-${Basinside.freshId('n')}`,
        step: path,
        name: name.value.trim() || named(about.name),
        began: Date.now(),
        seconds: about.seconds,
        longest: about.longest,
        broken: null,
        goesOn: about.goesOn === true,
        paused: 0,
      };
      name.value = '';
      keeper.change((/** @type {any[]} */ all) => [...all, timer]);
    };
    const start = make('button', { type: 'button', class: 'time-start', click: begin });
    const another = make('details', {}, make('summary', {}, say('timer.name')), make('label', { for: name.id }, say('timer.name.label')), name);
    const draw = () => {
      const running = mine();
      name.placeholder = named(about.short || about.name);
      start.textContent = say(running.length ? 'timer.start-another' : 'timer.start', { time: about.time });
      list.replaceChildren(...running.map((/** @type {any} */ each) => card(each, about, keeper, '')));
    };
    container.replaceChildren(
      list,
      start,
      another,
      full,
      ...(keeper.works ? [] : [make('p', { class: 'time-warning' }, say('timer.not-kept'))])
    );
    keepDrawn(keeper, draw, mine);
    setInterval(() => countDown(container, mine()), TICK);
  }

  /** @param {HTMLElement} container */
  async function strip(container) {
    const { make, say } = Basinside;
    const keeper = await Basinside.timers();
    const up = container.dataset.up || '';
    const title = document.title;
    let quiet = new Set();
    let beat = 0;
    const due = () =>
      keeper.value().filter((/** @type {any} */ each) =>
        ['reached', 'too-long'].includes(Basinside.timing.read(each, Date.now()).state)
      );
    const draw = () => {
      const all = keeper.value();
      const ringing = due().filter((/** @type {any} */ each) => !quiet.has(each.id));
      container.hidden = all.length === 0;
      const hush = () => {
        quiet = new Set([...quiet, ...due().map((/** @type {any} */ each) => each.id)]);
        draw();
      };
      const cards = all.map((/** @type {any} */ each) =>
        card(each, null, keeper, `${up}procedures/${each.step.replace('/', '.html#')}`)
      );
      container.replaceChildren(
        make('h2', {}, say('timer.heading')),
        make(
          'div',
          { role: 'alert' },
          ...ringing.map((/** @type {any} */ each) =>
            make('p', { class: 'time-alarm' }, say('timer.alarm', { name: each.name }))
          )
        ),
        ...(ringing.length && audio
          ? [make('button', { type: 'button', click: hush }, say('timer.hush'))]
          : []),
        make('div', { class: 'times' }, ...cards)
      );
      document.title = ringing.length ? say('timer.title', { n: ringing.length, title }) : title;
    };
    keepDrawn(keeper, draw, () => keeper.value());
    document.addEventListener('pointerdown', wakeSound, { once: true });
    setInterval(() => {
      countDown(container, keeper.value());
      const ringing = due().some((/** @type {any} */ each) => !quiet.has(each.id));
      if (ringing && beat % AGAIN === 0) sound();
      beat = ringing ? beat + 1 : 0;
    }, TICK);
  }

  for (const [name, begin] of Object.entries({ timer: atStep, timers: strip }))
    Basinside.component(name, (/** @type {HTMLElement} */ container) => {
      begin(container).catch((error) => console.error('component failed: ' + name, error));
    });
})(globalThis.Basinside = globalThis.Basinside || {});
