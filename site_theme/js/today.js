/* The page that is ticked at the beginning of a shift: form, what it means, until when it holds. */
(function (Basinside) {
  'use strict';

  /** @param {number} moment @param {number} now */
  function clockWords(moment, now) {
    const { clock, midnights } = Basinside.timing;
    const time = clock(moment);
    return midnights(now, moment) > 0 ? Basinside.say('today.tomorrow', { time }) : time;
  }

  /** @param {Date} day */
  function dayWords(day) {
    const month = Basinside.say('today.months').split('|')[day.getMonth()] || '';
    return Basinside.say('today.day', { day: day.getDate(), month, year: day.getFullYear() });
  }

  /** @param {any} plan @param {any[]} found */
  const ready = (plan, found) =>
    plan.instruments
      .filter((/** @type {any} */ _each, /** @type {number} */ n) => found[n].state === 'whole')
      .map((/** @type {any} */ each) => each.name);

  /**
   * What a change did, in a sentence or two.
   * @param {string[]} before @param {string[]} after @param {any[]} found @param {string} from
   */
  function told(before, after, found, from) {
    const { say, hasPhrase } = Basinside;
    const said = [];
    if (hasPhrase(`today.from.${from}`)) said.push(say(`today.from.${from}`));
    const open = found.flatMap(({ ways }) => ways).filter((way) => !way.missing.length);
    said.push(say('today.count', { n: after.length, all: found.length }));
    said.push(say('today.ways', { n: open.length }));
    const more = after.filter((each) => !before.includes(each));
    const less = before.filter((each) => !after.includes(each));
    if (more.length) said.push(say('today.more', { names: more.join('; ') }));
    if (less.length) said.push(say('today.less', { names: less.join('; ') }));
    return said.join(' ');
  }

  /** What is not there, and how the baths are, for paper. @param {any} plan @param {any} ticks */
  function absent(plan, ticks) {
    const names = Basinside.shiftNames(plan);
    const without = Object.keys(names)
      .filter((id) => !ticks.works.includes(id))
      .map((id) => names[id])
      .join('; ');
    return without ? Basinside.say('today.absent', { names: without }) : Basinside.say('today.all-there');
  }

  /** @param {HTMLElement} container @param {any} plan @param {any} keeper */
  function show(container, plan, keeper) {
    const { make, say, shift } = Basinside;
    const status = make('p', { role: 'status' });
    const see = make('a', { href: '#open-now' }, say('today.see'));
    const holds = make('p', { class: 'holds' });
    const result = make('div', { class: 'shift-result' });
    const form = Basinside.shiftForm(plan, keeper);
    const stamp = make('div', { class: 'stamp' });
    const print = make('button', { type: 'button', click: () => window.print() }, say('today.print'));
    const after = make('p', { class: 'deeds' }, print);
    /** @type {string[]} */
    let before = [];

    function hold(/** @type {any} */ ticks, /** @type {number} */ now) {
      holds.textContent = ticks.set
        ? say('today.holds', { time: clockWords(shift.until(ticks, plan.hours), now) })
        : say('today.holds-nothing', { hours: plan.hours });
    }

    function results(/** @type {any} */ ticks, /** @type {any[]} */ found, /** @type {number} */ now) {
      const open = new Set(
        [...result.querySelectorAll('details[open]')].map((each) => each.dataset.keep)
      );
      const shown = ticks.set
        ? [Basinside.shiftGlance(plan, found), ...Basinside.shiftResult(plan, found, ticks, now)]
        : [make('p', {}, say('today.nothing'))];
      result.replaceChildren(...shown);
      for (const each of result.querySelectorAll('details')) each.open = open.has(each.dataset.keep);
    }

    function draw(/** @type {string} */ from) {
      const now = Date.now();
      const ticks = keeper.value();
      hold(ticks, now);
      if (from === 'clock') {
        Basinside.shiftTimes(result, now);
        return;
      }
      form.show(ticks);
      const found = shift.evaluate(plan, ticks, Basinside.day(new Date(now)));
      results(ticks, found, now);
      container.classList.toggle('ticked', ticks.set > 0);
      document.body.classList.toggle('shift-ticked', ticks.set > 0);
      after.hidden = !ticks.set;
      see.hidden = !ticks.set;
      const list = ticks.set ? ready(plan, found) : [];
      if (ticks.set) status.textContent = told(before, list, found, from);
      else status.textContent = say(from === 'over' || before.length ? 'today.gone' : 'today.nothing');
      before = list;
    }

    window.addEventListener('beforeprint', () => {
      const now = new Date();
      const ticks = keeper.value();
      Basinside.shiftTimes(result, now.getTime());
      const until = clockWords(shift.until(ticks, plan.hours), now.getTime());
      const { clock } = Basinside.timing;
      const said = { time: clock(now.getTime()), day: dayWords(now), until };
      stamp.replaceChildren(
        make('p', {}, make('b', {}, say('today.stamp', said))),
        make('p', {}, absent(plan, ticks))
      );
    });
    container.replaceChildren(
      stamp,
      make(
        'div',
        { class: 'shift-ticks' },
        make('h2', {}, say('today.heading')),
        ...(keeper.works ? [] : [make('p', { class: 'notice' }, say('today.not-kept'))]),
        holds,
        form.element,
        make('div', { class: 'told' }, status, see)
      ),
      make('div', { class: 'shift-open' }, make('h2', { id: 'open-now' }, say('today.open')), result, after)
    );
    keeper.listen(draw);
    draw('start');
  }

  /** @param {HTMLElement} container */
  async function start(container) {
    const plan = Basinside.inlineJson('today');
    if (!plan) return;
    show(container, plan, await Basinside.shiftKeeper(plan.hours));
  }

  Basinside.component('today', start);
})(globalThis.Basinside = globalThis.Basinside || {});
