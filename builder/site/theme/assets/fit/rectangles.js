// Rectangles on a plan against outlines and each other, turned or not. Twin of builder/formulas/rectangles.py.
(function (fit) {
  "use strict";
  const TOLERANCE_M = 0.025;
  const ROUNDING_M = 0.000000001;
  const DEGREE = 0.017453292519943295;
  const SIDES = ["stage left", "stage right", "upstage", "downstage"];

  function rectangle(across, upstage, width, depth, turnedDeg) {
    const [cosine, sine] = turn(turnedDeg);
    return { x: across, y: upstage, width, depth, cos: cosine, sin: sine };
  }

  function turn(turnedDeg) {
    const quarter = Math.floor(turnedDeg / 90 + 0.5);
    const angle = (turnedDeg - 90 * quarter) * DEGREE;
    let cosine = 0, sine = 0, term = 1;
    for (let power = 0; power < 20; power += 2) {
      cosine += term;
      sine += term * angle / (power + 1);
      term = -term * angle * angle / ((power + 1) * (power + 2));
    }
    return [[cosine, sine], [-sine, cosine], [-cosine, -sine], [sine, -cosine]][quarter - 4 * Math.floor(quarter / 4)];
  }

  function moved(rect, across, upstage) {
    return { ...rect, x: rect.x + across, y: rect.y + upstage };
  }

  function quarterTurned(rect) {
    return { ...rect, cos: -rect.sin, sin: rect.cos };
  }

  function cornersOf(rect) {
    return [[-0.5, -0.5], [0.5, -0.5], [0.5, 0.5], [-0.5, 0.5]].map(([across, upstage]) => {
      const u = across * rect.width, v = upstage * rect.depth;
      return [rect.x + u * rect.cos - v * rect.sin, rect.y + u * rect.sin + v * rect.cos];
    });
  }

  function framed(rect, corners) {
    return corners.map((corner) => {
      const across = corner[0] - rect.x, upstage = corner[1] - rect.y;
      return [across * rect.cos + upstage * rect.sin, upstage * rect.cos - across * rect.sin];
    });
  }

  function whole(rect) {
    return [-rect.width / 2, rect.width / 2, -rect.depth / 2, rect.depth / 2];
  }

  function core(rect) {
    const across = rect.width / 2 - Math.min(TOLERANCE_M + ROUNDING_M, rect.width / 4);
    const depth = rect.depth / 2 - Math.min(TOLERANCE_M + ROUNDING_M, rect.depth / 4);
    return [-across, across, -depth, depth];
  }

  function extent(corners) {
    const across = corners.map((corner) => corner[0]), depth = corners.map((corner) => corner[1]);
    return [least(across), most(across), least(depth), most(depth)];
  }

  function least(numbers) {
    return numbers.reduce((one, other) => (other < one ? other : one));
  }

  function most(numbers) {
    return numbers.reduce((one, other) => (other > one ? other : one));
  }

  function edges(corners) {
    return corners.map((corner, index) => [corner, corners[(index + 1) % corners.length]]);
  }

  function crosses(box, edge) {
    let first = 0, last = 1, still = true;
    for (let axis = 0; axis < 2; axis += 1) {
      const start = edge[0][axis], step = edge[1][axis] - edge[0][axis];
      const low = box[axis * 2], high = box[axis * 2 + 1];
      if (step === 0) {
        if (start <= low || start >= high) return false;
      } else {
        still = false;
        const one = (low - start) / step, two = (high - start) / step;
        first = Math.max(first, Math.min(one, two));
        last = Math.min(last, Math.max(one, two));
      }
    }
    return first < last && !still;
  }

  function holds(corners, across, upstage) {
    let within = false;
    for (const [one, two] of edges(corners)) {
      if (one[1] > upstage !== two[1] > upstage && across < one[0] + (upstage - one[1]) / (two[1] - one[1]) * (two[0] - one[0])) within = !within;
    }
    return within;
  }

  function liesWithin(rect, corners) {
    const seen = framed(rect, corners), box = core(rect);
    return holds(seen, 0, 0) && !edges(seen).some((edge) => crosses(box, edge));
  }

  function meets(rect, corners) {
    const seen = framed(rect, corners), box = core(rect);
    return holds(seen, 0, 0) || edges(seen).some((edge) => crosses(box, edge));
  }

  function twiceArea(corners) {
    let total = 0;
    for (const [one, two] of edges(corners)) total += one[0] * two[1] - two[0] * one[1];
    return total;
  }

  function beyond(rect, corners, exact) {
    const way = twiceArea(corners) >= 0 ? 1 : -1;
    const over = new Map(SIDES.map((side) => [side, 0]));
    const seen = edges(framed(rect, corners)), box = exact ? whole(rect) : core(rect);
    edges(corners).forEach(([one, two], index) => {
      if (!crosses(box, seen[index])) return;
      const across = (two[1] - one[1]) * way, upstage = (one[0] - two[0]) * way;
      const length = Math.sqrt(across * across + upstage * upstage);
      const side = toward(across, upstage);
      for (const corner of cornersOf(rect)) over.set(side, Math.max(over.get(side), ((corner[0] - one[0]) * across + (corner[1] - one[1]) * upstage) / length));
    });
    return SIDES.filter((side) => over.get(side) > ROUNDING_M).map((side) => ({ side, over_m: over.get(side) }));
  }

  function toward(across, upstage) {
    if (Math.abs(across) >= Math.abs(upstage)) return across > 0 ? "stage left" : "stage right";
    return upstage > 0 ? "upstage" : "downstage";
  }

  function gap(rect, corners) {
    const seen = edges(framed(rect, corners)), box = whole(rect);
    if (seen.some((edge) => crosses(box, edge))) return 0;
    let nearest = 1000000;
    for (const edge of seen) {
      nearest = Math.min(nearest, toBox(box, edge[0]));
      for (const across of [box[0], box[1]]) for (const depth of [box[2], box[3]]) nearest = Math.min(nearest, toEdge(across, depth, edge));
    }
    return nearest;
  }

  function toBox(box, spot) {
    const across = Math.max(box[0] - spot[0], 0, spot[0] - box[1]);
    const upstage = Math.max(box[2] - spot[1], 0, spot[1] - box[3]);
    return Math.sqrt(across * across + upstage * upstage);
  }

  function toEdge(acrossM, upstageM, edge) {
    const across = edge[1][0] - edge[0][0], upstage = edge[1][1] - edge[0][1];
    const square = across * across + upstage * upstage;
    let part = square > 0 ? ((acrossM - edge[0][0]) * across + (upstageM - edge[0][1]) * upstage) / square : 0;
    part = Math.max(0, Math.min(1, part));
    const offAcross = edge[0][0] + part * across - acrossM, offUpstage = edge[0][1] + part * upstage - upstageM;
    return Math.sqrt(offAcross * offAcross + offUpstage * offUpstage);
  }

  function overlapBy(one, other) {
    const across = other.x - one.x, upstage = other.y - one.y;
    const along = Math.abs(one.cos * other.cos + one.sin * other.sin), athwart = Math.abs(one.cos * other.sin - one.sin * other.cos);
    let shortest = 1000000000000000;
    for (const [first, second] of [[one, other], [other, one]]) {
      const wide = (first.width + second.width * along + second.depth * athwart) / 2;
      const deep = (first.depth + second.width * athwart + second.depth * along) / 2;
      const offAcross = Math.abs(across * first.cos + upstage * first.sin), offUpstage = Math.abs(upstage * first.cos - across * first.sin);
      shortest = Math.min(shortest, wide - offAcross, deep - offUpstage);
    }
    return shortest;
  }

  function apart(one, other) {
    const across = other.x - one.x, upstage = other.y - one.y;
    const sides = one.width * one.width + one.depth * one.depth + other.width * other.width + other.depth * other.depth;
    return across * across + upstage * upstage > sides / 2;
  }

  function overlap(one, other) {
    return !apart(one, other) && overlapBy(one, other) > TOLERANCE_M + ROUNDING_M;
  }

  function touches(rect, corners) {
    const seen = framed(rect, corners);
    return holds(seen, 0, 0) || edges(seen).some((edge) => crosses(whole(rect), edge));
  }

  function into(rect, corners) {
    const box = whole(rect), seen = extent(framed(rect, corners));
    return Math.min(box[1] - seen[0], seen[1] - box[0], box[3] - seen[2], seen[3] - box[2]);
  }

  function shared(rect, corners) {
    const box = whole(rect);
    let left = framed(rect, corners);
    for (const [axis, limit, way] of [[0, box[0], 1], [0, box[1], -1], [1, box[2], 1], [1, box[3], -1]]) left = cut(left, axis, limit, way);
    return Math.abs(twiceArea(left)) / 2;
  }

  function cut(corners, axis, limit, way) {
    const kept = [];
    for (const [one, two] of edges(corners)) {
      const first = (one[axis] - limit) * way, second = (two[axis] - limit) * way;
      if (first >= 0) kept.push(one);
      if (first >= 0 !== second >= 0) {
        const part = first / (first - second);
        kept.push([one[0] + part * (two[0] - one[0]), one[1] + part * (two[1] - one[1])]);
      }
    }
    return kept;
  }

  const SLACK_M = TOLERANCE_M + ROUNDING_M;
  fit.plan = { TOLERANCE_M, SLACK_M, ROUNDING_M, rectangle, moved, quarterTurned, cornersOf, extent, liesWithin, meets, twiceArea, beyond, gap, overlapBy, apart, overlap, touches, into, shared };
})((window.housefit = window.housefit || {}));
