/* The ticks of a shift: vessels, what each group holds, and the baths; every change is told on. */
(function (Basinside) {
  'use strict';

  /** @param {string} id */
  const anchor = (id) => `tick-${id.replace(/[^a-z0-9]+/g, '-')}`;

  /**
   * @typedef {{change: (to: (ticks: any) => any) => void, ticks: () => any}} Keeper
   */

  /** @param {string} legend @param {...(Node | string)} inside */
  function group(legend, ...inside) {
    return Basinside.make('fieldset', {}, Basinside.make('legend', {}, legend), ...inside);
  }

  /** @param {any} ticks @param {(ticks: any) => any} to */
  function begun(ticks, to) {
    return { ...to(ticks), set: ticks.set || Date.now() };
  }

  /** @param {Keeper} keeper @param {{id: string, name: string}} need */
  function tick(keeper, { id, name }) {
    const { make } = Basinside;
    const box = make('input', { type: 'checkbox', id: anchor(id) });
    box.addEventListener('change', () => {
      const { checked } = box;
      keeper.change((ticks) =>
        begun(ticks, (before) => ({
          ...before,
          works: [
            ...before.works.filter((/** @type {string} */ each) => each !== id),
            ...(checked ? [id] : []),
          ],
        }))
      );
    });
    return {
      element: make('label', { class: 'shift-tick' }, box, make('span', {}, name)),
      show: (/** @type {any} */ ticks) => {
        box.checked = ticks.works.includes(id);
      },
    };
  }

  /** @param {Keeper} keeper @param {string} route @param {Record<string, string>} members */
  function changeBath(keeper, route, members) {
    keeper.change((ticks) =>
      begun(ticks, (before) => ({
        ...before,
        baths: {
          ...before.baths,
          [route]: { ...(before.baths[route] || Basinside.shift.noBath()), ...members },
        },
      }))
    );
  }

  /** @param {any} bath @param {Keeper} keeper */
  function madeOn(bath, keeper) {
    const { make, say } = Basinside;
    const box = make('input', { type: 'date', id: anchor(`bath/${bath.route}/made`) });
    box.addEventListener('change', () => changeBath(keeper, bath.route, { made: box.value }));
    const today = make(
      'button',
      {
        type: 'button',
        click: () => changeBath(keeper, bath.route, { made: Basinside.day(new Date()) }),
      },
      say('today.bath.made-today')
    );
    const help = say(bath.short ? 'today.bath.life-short' : 'today.bath.life', { life: bath.life });
    return {
      element: make(
        'div',
        { class: 'entry' },
        make('label', { for: box.id }, say('today.bath.made')),
        box,
        today,
        make('small', {}, help)
      ),
      show: (/** @type {any} */ tick) => {
        box.max = Basinside.day(new Date());
        if (box.value !== tick.made) box.value = tick.made;
      },
    };
  }

  /** @param {any} bath @param {Keeper} keeper */
  function strip(bath, keeper) {
    const { make, say } = Basinside;
    const name = anchor(`bath/${bath.route}/strip`);
    const choices = ['', 'passed', 'failed'].map((value) => {
      const box = make('input', { type: 'radio', name, value, id: `${name}-${value || 'unread'}` });
      box.addEventListener('change', () =>
        changeBath(keeper, bath.route, {
          strip: value,
          read: value ? Basinside.day(new Date()) : '',
        })
      );
      return { box, value };
    });
    return {
      element: make(
        'fieldset',
        { class: 'strip' },
        make('legend', {}, say('today.bath.strip')),
        ...choices.map(({ box, value }) =>
          make(
            'label',
            { class: 'shift-tick' },
            box,
            make('span', {}, say(`today.bath.strip.${value || 'unread'}`))
          )
        ),
        make('small', {}, say('today.bath.cloudy'))
      ),
      show: (/** @type {any} */ tick) => {
        // A strip that was read yesterday says nothing about today.
        const read = tick.read === Basinside.day(new Date()) || tick.strip === 'failed';
        for (const { box, value } of choices) box.checked = value === (read ? tick.strip : '');
      },
    };
  }

  /** @param {any} bath @param {Keeper} keeper */
  function heat(bath, keeper) {
    const { make, say } = Basinside;
    const box = make('input', {
      id: anchor(`bath/${bath.route}/heat`),
      inputmode: 'decimal',
      autocomplete: 'off',
      size: 5,
      maxlength: 8,
    });
    box.addEventListener('change', () => changeBath(keeper, bath.route, { heat: box.value.trim() }));
    return {
      element: make(
        'div',
        { class: 'entry' },
        make('label', { for: box.id }, say('today.bath.heat')),
        box,
        make('small', {}, say('today.bath.least', { least: bath.heat }))
      ),
      show: (/** @type {any} */ tick) => {
        if (box.value.trim() !== tick.heat) box.value = tick.heat;
      },
    };
  }

  /** @param {any} bath @param {Keeper} keeper */
  function bathGroup(bath, keeper) {
    const parts = [
      ...(bath.days === null ? [] : [madeOn(bath, keeper)]),
      ...(bath.strip ? [strip(bath, keeper)] : []),
      ...(bath.least === null ? [] : [heat(bath, keeper)]),
    ];
    const element = group(bath.name, ...parts.map((each) => each.element));
    element.id = anchor(`bath/${bath.route}`);
    return {
      element,
      show: (/** @type {any} */ ticks) => {
        const tick = ticks.baths[bath.route] || Basinside.shift.noBath();
        for (const each of parts) each.show(tick);
      },
    };
  }

  /** @param {any} plan */
  function unfit(plan) {
    const { make, prose } = Basinside;
    return plan.unfit.map((/** @type {any} */ each) =>
      make('p', { class: 'unfit' }, make('b', {}, each.name), ' ', ...prose(each.why))
    );
  }

  /** @param {any} plan @param {Keeper} keeper */
  function deeds(plan, keeper) {
    const { make, say } = Basinside;
    const all = [
      ...plan.vessels,
      ...plan.groups.flatMap((/** @type {any} */ each) => each.needs),
    ].map((each) => each.id);
    const everything = () =>
      keeper.change((ticks) => begun(ticks, (before) => ({ ...before, works: all })));
    const over = () => keeper.change(() => Basinside.shift.none());
    return make(
      'p',
      { class: 'deeds' },
      make('button', { type: 'button', class: 'first', click: everything }, say('today.all')),
      make('button', { type: 'button', click: over }, say('today.over'))
    );
  }

  /**
   * The form, and what shows ticks in it.
   * @param {any} plan @param {Keeper} keeper
   */
  Basinside.shiftForm = function (plan, keeper) {
    const { make, say } = Basinside;
    /** @type {{element: any, show: (ticks: any) => void}[]} */
    const shown = [];
    const ticks = (/** @type {any[]} */ needs) =>
      needs.map((need) => {
        const one = tick(keeper, need);
        shown.push(one);
        return one.element;
      });
    const vessels =
      plan.vessels.length || plan.unfit.length
        ? [group(say('today.vessels'), ...ticks(plan.vessels), ...unfit(plan))]
        : [];
    const groups = plan.groups.map((/** @type {any} */ each) =>
      group(each.name, ...ticks(each.needs))
    );
    const baths = plan.baths.map((/** @type {any} */ each) => {
      const one = bathGroup(each, keeper);
      shown.push(one);
      return one.element;
    });
    return {
      element: make('div', { class: 'shift-form' }, deeds(plan, keeper), ...vessels, ...baths, ...groups),
      show: (/** @type {any} */ now) => shown.forEach((each) => each.show(now)),
    };
  };

  Basinside.tickAnchor = anchor;
})(globalThis.Basinside = globalThis.Basinside || {});
