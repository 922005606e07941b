/* What stands around the questions of a self-test: the line of questions, the look over everything
   before the end, and the end, which says what to repeat first. */
(function (Basinside) {
  'use strict';

  const { make, prose } = Basinside;
  const LINE_MOST = 40; // more basins than this are no help to anybody

  /**
   * @typedef {{items: Item[], sheet: Sheet, go: (index: number) => void, finish: () => void,
   *   again: () => void, review: () => void, save: (place: HTMLElement) => void}} Around
   * @typedef {{index: number, why: string, sure: boolean}} Repeated
   */

  /** @param {Item[]} items @param {Sheet} sheet @param {number} index */
  function state(items, sheet, index) {
    const answer = sheet.answers[index];
    if (!answer || Basinside.selfTest.missing(items[index], answer)) return 'open';
    return answer.checked ? 'checked' : 'chosen';
  }

  /** @param {string} text @param {() => void} press @param {boolean} [first] */
  function button(text, press, first) {
    return make('button', { type: 'button', click: press, class: first ? 'first' : false }, text);
  }
  Basinside.pressable = button;

  /**
   * The questions as basins on a line; one is filled when it was checked.
   * @param {Around} around
   * @returns {HTMLElement | string}
   */
  Basinside.questionLine = function ({ items, sheet, go }) {
    const { say } = Basinside;
    if (items.length > LINE_MOST) return '';
    const basins = items.map((_, index) => {
      const kind = state(items, sheet, index);
      const name = say(`self-test.line-${kind}`, { number: index + 1 });
      const press = make(
        'button',
        {
          type: 'button', click: () => go(index), 'aria-label': name, 'data-state': kind,
          'aria-current': index === sheet.at ? 'step' : false,
        },
        String(index + 1)
      );
      return make('li', {}, press);
    });
    return make(
      'nav', { class: 'question-line', 'aria-label': say('self-test.line') }, make('ol', {}, ...basins)
    );
  };

  /**
   * Before the end: what is unanswered first, then the rest.
   * @param {Around} around
   * @returns {{page: HTMLElement, heading: HTMLElement}}
   */
  Basinside.selfTestReview = function ({ items, sheet, go, finish }) {
    const { say } = Basinside;
    const heading = make('h2', { tabindex: -1 }, say('self-test.review'));
    const all = items.map((item, index) => ({ item, index, kind: state(items, sheet, index) }));
    /** @type {(kinds: string[]) => HTMLElement} */
    const list = (kinds) =>
      make(
        'ul',
        { class: 'over' },
        ...all
          .filter(({ kind }) => kinds.includes(kind))
          .map(({ item, index, kind }) =>
            make(
              'li',
              {},
              button(say('self-test.go', { number: index + 1 }), () => go(index)),
              make('p', {}, make('b', {}, say(`self-test.state-${kind}`)), ' ', ...prose(item.stem))
            )
          )
      );
    const open = all.filter(({ kind }) => kind === 'open').length;
    const page = make('div', { class: 'review' }, heading);
    page.append(
      make('p', {}, say(open ? 'self-test.review-open' : 'self-test.review-whole', { count: open }))
    );
    if (open) page.append(list(['open']));
    const rest = list(['chosen', 'checked']);
    if (rest.childElementCount) page.append(make('h3', {}, say('self-test.review-rest')), rest);
    page.append(
      make('div', { class: 'actions' },
        button(say('self-test.back'), () => go(sheet.at)),
        button(say('self-test.finish'), finish, true))
    );
    return { page, heading };
  };

  /**
   * The end: what to repeat first, with the way back to each step, and the file to save.
   * @param {Around} around
   * @returns {{page: HTMLElement, heading: HTMLElement}}
   */
  Basinside.selfTestEnd = function ({ items, sheet, go, again, review, save }) {
    const { say } = Basinside;
    /** @type {Repeated[]} */
    const repeat = Basinside.selfTest.toRepeat(items, sheet);
    const right = items.length - repeat.length;
    const heading = make('h2', { tabindex: -1 }, say('self-test.end'));
    const page = make('div', { class: 'end' }, heading);
    page.append(make('p', {}, say('self-test.tally', { right, count: items.length })));
    /** @param {string} key @param {Repeated[]} among */
    const list = (key, among) =>
      among.length
        ? [make('h3', {}, say(key)), make('ol', { class: 'repeat' }, ...among.map(repeated))]
        : [];
    /** @param {Repeated} one */
    const repeated = ({ index, why }) => {
      const item = /** @type {Item} */ (items[index]);
      return make(
        'li', {},
        make('p', {}, make('b', {}, say(`self-test.why-${why}`)), ' ', ...prose(item.stem)),
        Basinside.leadBack(item),
        button(say('self-test.go', { number: index + 1 }), () => go(index))
      );
    };
    const sure = repeat.filter((each) => each.sure);
    const others = repeat.filter((each) => !each.sure);
    page.append(
      ...list('self-test.repeat-sure', sure),
      ...list(sure.length ? 'self-test.repeat-too' : 'self-test.repeat', others)
    );
    if (!repeat.length) page.append(make('p', {}, say('self-test.nothing-to-repeat')));
    const place = make('div', { class: 'saved' });
    page.append(
      make('h3', {}, say('self-test.save-heading')),
      make('p', {}, say('self-test.save-why')),
      make('div', { class: 'actions' },
        button(say('self-test.save'), () => save(place), true),
        button(say('self-test.over-again'), review),
        button(say('self-test.again'), again)),
      place
    );
    return { page, heading };
  };
})(globalThis.Basinside = globalThis.Basinside || {});
