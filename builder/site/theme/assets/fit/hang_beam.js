// What the supports of a hung body carry: a beam on level supports that can pull and not push. Twin of builder/formulas/beams.py and contact.py.
(function (fit) {
  "use strict";
  const PLUMB_M = 0.000001;
  const ROUNDING = 0.000000001;
  const MOST_STEPS = 300;
  const TIPS = "its weight does not hang between its supports, so it would tip or lift off one of them";
  const UNRESOLVED = "one of its supports would lift, and what the others then carry was not found";
  const zeros = (count) => new Array(count).fill(0);
  const upTo = (count) => Array.from({ length: count }, (_, index) => index);

  // Cases in the order of the supports, level first, then each of three or more slack; without cases, why says what stands against them.
  function casesOf(loads, places) {
    const [total, centre] = weighed(loads);
    const order = upTo(places.length).sort((one, other) => places[one] - places[other]);
    const ordered = order.map((index) => places[index]);
    if (ordered.length === 1) return { cases: [[total]], why: "" };
    const alone = standing(total, centre, ordered);
    if (alone.why !== "") return { cases: [], why: alone.why };
    const found = alone.carried.length > 0 ? [alone.carried] : beamCases(loads, ordered, total, centre);
    if (found.length === 0) return { cases: [], why: UNRESOLVED };
    return { cases: found.map((each) => inOrder(each, order)), why: "" };
  }

  function weighed(loads) {
    let total = 0, moment = 0;
    for (const load of loads) {
      total += load.kg;
      moment += load.kg * ((load.from_m + load.to_m) / 2);
    }
    return [total, total > 0 ? moment / total : 0];
  }

  function inOrder(carried, order) {
    const found = zeros(order.length);
    order.forEach((index, position) => { found[index] = carried[position]; });
    return found;
  }

  function standing(total, centre, places) {
    const last = places.length - 1;
    if (total <= 0) return { why: "", carried: zeros(places.length) };
    if (centre < places[0] - PLUMB_M || centre > places[last] + PLUMB_M) return { why: TIPS, carried: [] };
    for (const index of [0, last]) {
      if (Math.abs(centre - places[index]) <= PLUMB_M) return { why: "", carried: places.map((_, each) => (each === index ? total : 0)) };
    }
    return { why: "", carried: [] };
  }

  function beamCases(loads, places, total, centre) {
    const { curvature, stiffness } = curvatures(places);
    const pull = places.map((_, support) => pulled(loads, places, curvature, support));
    const found = [resolved(pull, stiffness, total)];
    for (let gone = 0; gone < (places.length > 2 ? places.length : 0); gone += 1) {
      const keep = upTo(places.length).filter((each) => each !== gone);
      const alone = standing(total, centre, keep.map((each) => places[each]));
      if (alone.why === "") {
        const carried = alone.carried.length > 0 ? alone.carried : without(pull, stiffness, gone, keep, total);
        found.push(carried.length === 0 ? carried : places.map((_, each) => (each === gone ? 0 : carried[keep.indexOf(each)])));
      }
    }
    return found.some((each) => each.length === 0) ? [] : found;
  }

  function without(pull, stiffness, gone, keep, total) {
    const share = keep.map((each) => stiffness[each][gone] / stiffness[gone][gone]);
    const pulls = keep.map((each, row) => pull[each] - share[row] * pull[gone]);
    const rest = keep.map((one, row) => keep.map((each) => stiffness[one][each] - share[row] * stiffness[gone][each]));
    return resolved(pulls, rest, total);
  }

  function curvatures(places) {
    const count = places.length;
    const span = upTo(count - 1).map((index) => places[index + 1] - places[index]);
    const kink = upTo(count).map(() => zeros(count)), curvature = upTo(count).map(() => zeros(count)), stiffness = upTo(count).map(() => zeros(count));
    for (let inner = 1; inner < count - 1; inner += 1) {
      kink[inner][inner - 1] = 1 / span[inner - 1];
      kink[inner][inner] = -1 / span[inner - 1] - 1 / span[inner];
      kink[inner][inner + 1] = 1 / span[inner];
    }
    for (let moved = 0; moved < count; moved += 1) {
      const column = threeMoments(span, kink.map((row) => row[moved]));
      for (let inner = 0; inner < count; inner += 1) curvature[inner][moved] = column[inner];
    }
    for (let row = 0; row < count; row += 1) {
      for (let moved = 0; moved < count; moved += 1) {
        for (let inner = 0; inner < count; inner += 1) {
          stiffness[row][moved] += (kink[inner][row] * curvature[inner][moved] + kink[inner][moved] * curvature[inner][row]) / 2;
        }
      }
    }
    return { curvature, stiffness };
  }

  function threeMoments(span, kinks) {
    const count = kinks.length, across = zeros(count), found = zeros(count);
    for (let inner = 1; inner < count - 1; inner += 1) {
      const diagonal = (span[inner - 1] + span[inner]) / 3 - (span[inner - 1] / 6) * across[inner - 1];
      across[inner] = span[inner] / 6 / diagonal;
      found[inner] = (kinks[inner] - (span[inner - 1] / 6) * found[inner - 1]) / diagonal;
    }
    for (let inner = count - 3; inner > 0; inner -= 1) found[inner] = found[inner] - across[inner] * found[inner + 1];
    return found;
  }

  function pulled(loads, places, curvature, support) {
    let found = 0;
    for (let piece = 0; piece <= places.length; piece += 1) {
      const line = influence(places, curvature, support, piece);
      const origin = piece > 0 ? places[piece - 1] : places[0];
      for (const load of loads) {
        if (load.from_m === load.to_m) {
          if (pieceOf(load.from_m, places) === piece) found += load.kg * height(line, load.from_m - origin);
        } else {
          const begin = piece === 0 || load.from_m > places[piece - 1] ? load.from_m : places[piece - 1];
          const end = piece === places.length || load.to_m < places[piece] ? load.to_m : places[piece];
          if (end > begin) found += (load.kg / (load.to_m - load.from_m)) * (area(line, end - origin) - area(line, begin - origin));
        }
      }
    }
    return found;
  }

  function pieceOf(at, places) {
    return places.filter((place) => place <= at).length;
  }

  function influence(places, curvature, support, piece) {
    const last = places.length - 1;
    const left = Math.min(piece > 0 ? piece - 1 : 0, last - 1);
    const span = places[left + 1] - places[left];
    const first = curvature[left][support], second = curvature[left + 1][support];
    const here = left === support ? 1 : 0, there = left + 1 === support ? 1 : 0;
    const rise = (there - here) / span;
    if (piece === last + 1) return [there, rise + (span * (first + 2 * second)) / 6, 0, 0];
    const slope = rise - (span * (2 * first + second)) / 6;
    return piece === 0 ? [here, slope, 0, 0] : [here, slope, first / 2, (second - first) / (6 * span)];
  }

  function height(line, t) {
    return ((line[3] * t + line[2]) * t + line[1]) * t + line[0];
  }

  function area(line, t) {
    return ((((line[3] / 4) * t + line[2] / 3) * t + line[1] / 2) * t + line[0]) * t;
  }

  function resolved(pull, stiffness, total) {
    if (pull.every((kg) => kg >= 0)) return pull;
    const count = pull.length;
    let free = [];
    for (let step = 0; step < MOST_STEPS; step += 1) {
      const state = letGo(pull, stiffness, free), wrong = amiss(state, stiffness, free, total);
      if (wrong.length === 0) return state.carried.map((kg) => (kg > 0 ? kg : 0));
      const before = free, turned = step < 2 * count ? wrong : [Math.max(...wrong)];
      free = upTo(count).filter((index) => before.includes(index) !== turned.includes(index));
    }
    return [];
  }

  function letGo(pull, stiffness, free) {
    const rise = solved(free.map((row) => free.map((each) => stiffness[row][each])), free.map((row) => -pull[row]));
    const carried = pull.map((kg, row) => {
      if (free.includes(row)) return 0;
      let found = kg;
      rise.forEach((each, position) => { found += stiffness[row][free[position]] * each; });
      return found;
    });
    return { rise, carried };
  }

  function amiss(state, stiffness, free, total) {
    if (state.rise.length < free.length) return free;
    const least = -ROUNDING * total;
    const passed = free.filter((each, position) => state.rise[position] * stiffness[each][each] < least);
    return [...passed, ...upTo(state.carried.length).filter((row) => !free.includes(row) && state.carried[row] < least)];
  }

  function solved(matrix, right) {
    const count = right.length;
    const rows = matrix.map((row, index) => [...row, right[index]]);
    for (let pivot = 0; pivot < count; pivot += 1) {
      if (rows[pivot][pivot] <= ROUNDING * matrix[pivot][pivot]) return [];
      for (let below = pivot + 1; below < count; below += 1) {
        const factor = rows[below][pivot] / rows[pivot][pivot];
        for (let column = pivot; column <= count; column += 1) rows[below][column] -= factor * rows[pivot][column];
      }
    }
    const found = zeros(count);
    for (let index = count - 1; index >= 0; index -= 1) {
      let value = rows[index][count];
      for (let column = index + 1; column < count; column += 1) value -= rows[index][column] * found[column];
      found[index] = value / rows[index][index];
    }
    return found;
  }

  fit.hangs = { ...fit.hangs, casesOf };
})((window.housefit = window.housefit || {}));
