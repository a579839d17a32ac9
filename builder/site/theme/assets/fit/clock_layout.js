// The work before doors, laid out from load-in onwards, each piece as early as it can be. Twin of builder/fit/clock/laying_out.py.
(function (fit) {
  "use strict";
  const LATEST_S = 604800;
  const QUIET = "waiting: quiet hours";

  function laidOut(pieces, startS, meals, quiet) {
    const state = { nowS: startS, freshS: startS, sure: true, rows: [], pins: [], open: [], breaks: 0 };
    for (const piece of pieces) {
      waitUntil(piece.notBeforeS, state, meals);
      if (piece.lengthS === null && piece.untilS !== null) fill(piece, state, meals);
      else if (piece.splits) inParts(piece, state, meals);
      else whole(piece, state, meals, quiet);
    }
    return state;
  }

  function waitUntil(time, state, meals) {
    if (time !== null && time > state.nowS) {
      rested(time, state, meals);
      state.nowS = time;
    }
  }

  function rested(time, state, meals) {
    if (time > state.nowS && time - state.nowS >= meals.breakS) {
      state.freshS = time;
      return true;
    }
    return false;
  }

  function due(time, state, meals) {
    return meals.afterS !== null && time > state.freshS + meals.afterS && state.nowS < LATEST_S;
  }

  function row(state, what, whose, length) {
    if (length > 0) {
      const [fromS, toS] = state.sure ? [state.nowS, state.nowS + length] : [null, null];
      state.rows.push({ fromS, toS, lengthS: length, what, whose });
    }
    state.nowS += length;
  }

  function rest(state, meals) {
    row(state, "meal break", "House", meals.breakS);
    state.freshS = state.nowS;
    state.breaks += 1;
  }

  function fill(piece, state, meals) {
    const length = piece.untilS - state.nowS;
    if (length > 0) {
      if (meals.dueS !== null && piece.untilS > state.freshS + meals.dueS) {
        state.open.push(piece);
        state.freshS = piece.untilS;
      }
      row(state, piece.what, piece.whose, length);
    }
  }

  function inParts(piece, state, meals) {
    if (piece.lengthS === null) {
      unknown(piece, state);
      return;
    }
    let left = piece.lengthS;
    while (due(state.nowS + left, state, meals)) {
      const first = state.freshS + meals.afterS - state.nowS;
      if (first > 0) {
        row(state, piece.what, piece.whose, first);
        left -= first;
      }
      rest(state, meals);
    }
    row(state, piece.what, piece.whose, left);
  }

  function unknown(piece, state) {
    state.rows.push({ fromS: state.sure ? state.nowS : null, toS: null, lengthS: null, what: piece.what, whose: piece.whose });
    state.sure = false;
  }

  function whole(piece, state, meals, quiet) {
    const length = piece.lengthS !== null ? piece.lengthS : 0;
    let start = heardFrom(piece, state, length, quiet);
    if (!rested(start, state, meals) && due(start + length, state, meals) && state.nowS > state.freshS) {
      rest(state, meals);
      start = heardFrom(piece, state, length, quiet);
      rested(start, state, meals);
    }
    const first = piece.atS !== null && piece.atS > state.nowS ? piece.atS : state.nowS;
    if (start > first && state.sure) state.rows.push({ fromS: first, toS: start, lengthS: start - first, what: QUIET, whose: "House" });
    if (piece.atS !== null) {
      state.pins.push({ lateS: start - piece.atS, atS: piece.atS, what: piece.what, whose: piece.whose });
      state.sure = state.sure || start === piece.atS;
    }
    state.nowS = start;
    if (piece.lengthS === null) unknown(piece, state);
    else row(state, piece.what, piece.whose, length);
  }

  function heardFrom(piece, state, length, quiet) {
    let start = piece.atS !== null && piece.atS > state.nowS ? piece.atS : state.nowS;
    for (const [first, last] of quiet) if (start < last && start + length > first && length > 0) start = last;
    return start;
  }

  Object.assign(fit, { laidOut });
})((window.housefit = window.housefit || {}));
