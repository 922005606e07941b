/* The calculators on the page: form, answer, refusal. Every word is a phrase of the page. */
(function (Basinside) {
  'use strict';

  const PPM_IN_PERCENT = 10000;

  /** @param {string} key @param {Record<string, string>} [holes] */
  const phrase = (key, holes) => Basinside.say(`amounts.${key}`, holes);

  /** @param {string} text as 2026-11-20 */
  function dayWords(text) {
    const [year = '', month = '', day = ''] = text.split('-');
    return phrase('day', { day: String(Number(day)), month: phrase(`month.${Number(month)}`), year });
  }

  /** @param {string} unit */
  const unitWords = (unit) =>
    unit && Basinside.hasPhrase(`amounts.unit.${unit}`) ? phrase(`unit.${unit}`) : unit;

  /** @param {[string, Record<string, string>]} said */
  function words([code, holes]) {
    /** @type {Record<string, string>} */
    const filled = {};
    for (const [name, value] of Object.entries(holes)) {
      if (name === 'field' || name === 'measure') filled[name] = phrase(`${name}.${value}`);
      else if (name === 'unit') filled[name] = unitWords(value);
      else filled[name] = name.endsWith('_day') ? dayWords(value) : value;
    }
    return phrase(`said.${code}`, filled);
  }

  /** @param {any} amount */
  function large(amount) {
    const { make } = Basinside;
    const one = amount.number === '1' && Basinside.hasPhrase(`amounts.unit.${amount.unit}.one`);
    const unit = one ? phrase(`unit.${amount.unit}.one`) : unitWords(amount.unit);
    const [number, after] =
      amount.unit === 'date' ? [dayWords(amount.number), ''] : amount.number ? [amount.number, unit] : [unit, ''];
    return make(
      'div',
      { class: 'figure' },
      make('data', { value: `${amount.number} ${amount.unit}`.trim() }, make('b', {}, number), after ? ' ' : '',
        ...(after ? [make('i', {}, after)] : [])),
      make('span', {}, words(amount.of))
    );
  }

  /** @param {string} key @param {string[]} lines */
  function fact(key, lines) {
    const { make } = Basinside;
    if (!lines.length) return [];
    const shown = lines.map((line) => make('p', {}, line.charAt(0).toUpperCase() + line.slice(1)));
    return [make('div', {}, make('dt', {}, phrase(key)), make('dd', {}, ...shown))];
  }

  /** @param {any} answer @param {any} ground */
  function shown(answer, ground) {
    const { make } = Basinside;
    const all = (/** @type {any[]} */ lines) => lines.map(words);
    const { read, times, ratio, plain } = Basinside.exact;
    const percent = answer.strength;
    const ppm = percent && plain(times(read(percent), ratio(PPM_IN_PERCENT)));
    const usual = ground.cautions[answer.kind];
    const more = answer.cautions.filter((/** @type {string} */ code) => !usual.includes(code));
    return [
      ...(answer.refusal
        ? [make('p', { class: 'why-none' }, make('strong', {}, phrase('refused')), ': ', words(answer.refusal))]
        : []),
      ...(answer.amounts.length ? [make('div', { class: 'large' }, ...answer.amounts.map(large))] : []),
      ...more.map((/** @type {string} */ code) => make('p', { class: 'more' }, phrase(`caution.${code}`))),
      make(
        'dl',
        { class: 'facts' },
        ...fact(answer.refusal ? 'would-do' : 'do-now', all(answer.would_do)),
        ...fact('measured', all(answer.measured)),
        ...fact('strength', percent ? [phrase('strength-is', { percent, ppm })] : []),
        ...fact('working', all(answer.working)),
        ...fact('reckoned', all(answer.inputs))
      ),
    ];
  }

  /** @param {HTMLElement} container */
  function start(container) {
    const { make } = Basinside;
    const kind = container.dataset.kind || '';
    const ground = Basinside.inlineJson('amount-ground');
    const { boxes, typed } = Basinside.amountForm(Basinside.inlineJson('amount-forms')[kind]);
    const place = make('div', { class: 'amount-answer', role: 'status' });
    /** @param {Event} event */
    const submit = (event) => {
      event.preventDefault();
      try {
        place.replaceChildren(...shown(Basinside.amounts.answer(ground, kind, typed()), ground));
      } catch (error) {
        console.error('calculator failed: ' + kind, error);
        place.replaceChildren(make('p', { class: 'why-none' }, phrase('failed')));
      }
    };
    const heading = container.parentElement?.querySelector('h2');
    const form = make(
      'form',
      { class: 'amount-form', novalidate: true, submit, 'aria-label': heading?.textContent || '' },
      ...boxes,
      make('button', { type: 'submit', class: 'first' }, phrase('work'))
    );
    container.replaceChildren(form, place);
  }

  Basinside.component('amount', start);
})(globalThis.Basinside = globalThis.Basinside || {});
