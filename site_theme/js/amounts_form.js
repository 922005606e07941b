/* The form of a calculator, laid out from what the page brought: fields, choices, own values. */
(function (Basinside) {
  'use strict';

  const LINES = 6;

  /**
   * @typedef {{name: string, label: string, kind: string, value?: string, after?: string,
   *   options?: any[][], unit?: Field, when?: [string, string], other?: string, hint?: string,
   *   today?: boolean}} Field
   * @typedef {{nodes: Node[], read: () => Record<string, string>,
   *   fill: (name: string, value: string) => void, listen?: (change: () => void) => void}} Laid
   */

  /** @param {any[][]} options @param {Record<string, string>} members */
  function select(options, members) {
    const { make } = Basinside;
    return make('select', members, ...options.map(([value, text]) => make('option', { value }, text)));
  }

  /** @param {string} id @param {Record<string, string>} [members] */
  const box = (id, members = {}) =>
    Basinside.make('input', { id, type: 'text', inputmode: 'decimal', autocomplete: 'off', ...members });

  /** @param {Field} field @returns {Laid} */
  function number(field) {
    const { make, freshId } = Basinside;
    const id = freshId('amount');
    const input = box(id, { value: field.value || '' });
    const unit = field.unit ? select(field.unit.options || [], { 'aria-label': field.unit.label }) : null;
    const after = unit || (field.after ? make('span', {}, field.after) : '');
    return {
      nodes: [make('label', { for: id }, field.label), make('div', { class: 'with-unit' }, input, after)],
      read: () => ({ [field.name]: input.value, ...(unit ? { [field.unit?.name || '']: unit.value } : {}) }),
      fill: (name, value) => {
        if (name === field.name) input.value = value;
        if (unit && field.unit && name === field.unit.name) unit.value = value;
      },
    };
  }

  /** @param {Field} field @returns {Laid} */
  function choice(field) {
    const { make, freshId } = Basinside;
    const id = freshId('amount');
    const list = select(field.options || [], { id });
    return {
      nodes: [make('label', { for: id }, field.label), list],
      read: () => ({ [field.name]: list.value }),
      fill: () => {},
      listen: (change) => list.addEventListener('change', change),
    };
  }

  /** A choice, or a number of one's own. @param {Field} field @returns {Laid} */
  function preset(field) {
    const { make, freshId } = Basinside;
    const id = freshId('amount');
    const list = select(field.options || [], { id });
    const input = box(freshId('amount'), { 'aria-label': field.other || field.label });
    const own = make('div', { class: 'with-unit' }, input, make('span', {}, field.after || ''));
    const show = () => {
      own.hidden = list.value !== '';
    };
    list.addEventListener('change', show);
    show();
    return {
      nodes: [make('label', { for: id }, field.label), list, own],
      read: () => ({ [field.name]: list.value || input.value }),
      fill: () => {},
    };
  }

  /** A day, or a day with a time: now, or empty. @param {Field} field @returns {Laid} */
  function when(field) {
    const { make, freshId } = Basinside;
    const id = freshId('amount');
    const moment = field.kind === 'moment';
    const input = make('input', { id, type: moment ? 'datetime-local' : 'date' });
    const now = new Date();
    const two = (/** @type {number} */ n) => String(n).padStart(2, '0');
    if (moment) input.value = `${Basinside.day(now)}T${two(now.getHours())}:${two(now.getMinutes())}`;
    else if (field.today) input.value = Basinside.day(now);
    return {
      nodes: [make('label', { for: id }, field.label), input],
      read: () => ({ [field.name]: input.value.slice(0, moment ? 16 : 10) }),
      fill: () => {},
    };
  }

  /** @param {Field} field @returns {Laid} */
  function lines(field) {
    const { make, freshId } = Basinside;
    const [id, hint] = [freshId('amount'), freshId('amount')];
    const area = make('textarea', { id, rows: LINES, spellcheck: 'false', 'aria-describedby': hint });
    return {
      nodes: [
        make('label', { for: id }, field.label),
        area,
        make('p', { class: 'small', id: hint }, field.hint || ''),
      ],
      read: () => ({ [field.name]: area.value }),
      fill: () => {},
    };
  }

  /**
   * A choice that fills other fields with what the clinic says of it.
   * @param {Field} field @param {(values: Record<string, string>) => void} fill
   * @returns {Laid}
   */
  function filling(field, fill) {
    const { make, freshId } = Basinside;
    const id = freshId('amount');
    const options = field.options || [];
    const list = select(options.map(([text], at) => [String(at), text]), { id });
    const choose = () => fill((options[Number(list.value)] || ['', {}])[1]);
    list.addEventListener('change', choose);
    queueMicrotask(choose);
    return { nodes: [make('label', { for: id }, field.label), list], read: () => ({}), fill: () => {} };
  }

  /**
   * The fields of a form, and what is typed in them.
   * @param {Field[]} fields
   */
  function layOut(fields) {
    const { make } = Basinside;
    /** @type {Laid[]} */
    const laid = [];
    const fill = (/** @type {Record<string, string>} */ values) => {
      for (const [name, value] of Object.entries(values)) laid.forEach((each) => each.fill(name, value));
    };
    const makers = { number, choice, preset, day: when, moment: when, lines };
    for (const field of fields) {
      const maker = makers[/** @type {keyof typeof makers} */ (field.kind)];
      laid.push(maker ? maker(field) : filling(field, fill));
    }
    const boxes = laid.map((each) => make('div', { class: 'field' }, ...each.nodes));
    const typed = () => Object.assign({}, ...laid.map((each) => each.read()));
    const show = () => {
      const now = typed();
      fields.forEach((field, at) => {
        if (field.when) boxes[at].hidden = now[field.when[0]] !== field.when[1];
      });
    };
    laid.forEach((each) => each.listen?.(show));
    show();
    return { boxes, typed };
  }

  Basinside.amountForm = layOut;
})(globalThis.Basinside = globalThis.Basinside || {});
