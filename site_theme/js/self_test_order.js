/* Lines to be put in order by buttons; then what was kept of what matters, and the right order. */
(function (Basinside) {
  'use strict';

  const { make, prose } = Basinside;

  /**
   * A line with its two buttons. The line beside it moves, never the line itself: what is moved in
   * the page loses the focus.
   * @param {Prose} text @param {number} shown @param {(row: HTMLElement, by: number) => void} move
   */
  function line(text, shown, move) {
    const { say } = Basinside;
    const words = make('span', { id: Basinside.freshId('line') }, ...prose(text));
    const row = make('li', { 'data-shown': shown }, words);
    for (const [by, way] of /** @type {[number, string][]} */ ([[-1, 'up'], [1, 'down']])) {
      const name = Basinside.freshId('way');
      row.append(
        make(
          'button',
          { type: 'button', 'data-way': way, 'aria-labelledby': `${name} ${words.id}`,
            click: () => move(row, by) },
          make('span', { id: name }, say(`self-test.order-${way}`))
        )
      );
    }
    return row;
  }

  /** @param {Item} item @param {ItemAnswer} answer @param {Deeds} deeds @returns {Node[]} */
  function controls(item, answer, deeds) {
    const { say } = Basinside;
    const list = make('ol', { class: 'order-lines' });
    const told = make('p', { role: 'status', class: 'told' });
    const rows = () => /** @type {HTMLElement[]} */ ([...list.children]);

    const atEnds = () => {
      const all = rows();
      all.forEach((row, n) => {
        row.querySelector('[data-way="up"]')?.setAttribute('aria-disabled', String(n === 0));
        row.querySelector('[data-way="down"]')
          ?.setAttribute('aria-disabled', String(n === all.length - 1));
      });
    };
    /** @param {HTMLElement} row @param {number} by */
    const move = (row, by) => {
      const other = by < 0 ? row.previousElementSibling : row.nextElementSibling;
      if (other) {
        if (by < 0) row.after(other);
        else row.before(other);
        atEnds();
        deeds.give({ ordered: rows().map((each) => Number(each.dataset.shown)) });
      }
      const line = row.querySelector('span')?.textContent || '';
      const place = { line, place: rows().indexOf(row) + 1, count: rows().length };
      told.textContent = say(other ? 'self-test.order-place' : 'self-test.order-end', place);
    };
    const shown = answer.ordered.length ? answer.ordered : answer.order.map((_, n) => n);
    list.append(
      ...shown.map((p) => line(item.answer.lines[answer.order[p] ?? -1], p, move))
    );
    atEnds();
    return [list, told];
  }

  /** @param {Item} item @param {ItemAnswer} answer @returns {Node[]} */
  function reasons(item, answer) {
    const { say } = Basinside;
    const { lines, kept, before, because, belief } = item.answer;
    const own = answer.ordered.map((p) => answer.order[p] ?? -1);
    const broken = kept.filter((_, n) => {
      const [first, then] = /** @type {[number, number]} */ (before[n]);
      return own.indexOf(first) > own.indexOf(then);
    });
    const told = make('p', {}, say('self-test.order-kept', {
      kept: kept.length - broken.length, count: kept.length,
    }));
    const [first] = broken;
    const wrong = first
      ? [make('p', { 'data-verdict': 'wrong' }, make('b', {}, first.rule), ' ',
          ...prose(first.because), ' ', ...prose(first.belief))]
      : [];
    const order = (/** @type {number[]} */ places) =>
      make('ol', { class: 'ordered' }, ...places.map((n) => make('li', {}, ...prose(lines[n]))));
    return [
      told, ...wrong,
      ...(first ? [make('h4', {}, say('self-test.order-yours')), order(own)] : []),
      make('h4', {}, say('self-test.order-right')), order(lines.map((_, n) => n)),
      make('p', {}, ...prose(because), ' ', ...(first ? prose(belief) : [])),
    ];
  }

  /**
   * @param {Item} item @param {ItemAnswer} answer @param {Deeds} deeds
   * @returns {Answering}
   */
  Basinside.answering.order = (item, answer, deeds) => ({
    hint: Basinside.say('self-test.order'),
    reasons: Basinside.say('self-test.order-reasons'),
    inside: answer.checked ? reasons(item, answer) : controls(item, answer, deeds),
  });
})(globalThis.Basinside = globalThis.Basinside || {});
