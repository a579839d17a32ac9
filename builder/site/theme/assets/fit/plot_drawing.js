// A stage plot drawn on the deck that it was judged on: numbers in the drawing, names and verdicts in the list below it. Built of nodes, never of text.
(function (fit) {
  "use strict";
  const engine = (window.housecheck = window.housecheck || {});
  const SPACE = "http://www.w3.org/2000/svg";
  const WIDTH = 520,
    MARGIN = 26,
    FOOT = 26,
    FOOT_M = 0.3048;
  const SIGNS = { "fits, with a note": " ~", ask: " ?" };
  const MOST_BESIDE_M = 12;
  const HOUSE = {
    deck: { "stroke-width": 2.2, fill: 0.04 },
    wing: { "stroke-width": 0.8, fill: 0.05 },
    zone: { "stroke-width": 1, "stroke-dasharray": "2 3" },
    obstruction: { "stroke-width": 1, fill: 0.55 },
  };
  const SHOW = {
    fits: { "stroke-width": 1.2, fill: 0.12 },
    short: { "stroke-width": 2.4 },
    ask: { "stroke-width": 1.6, "stroke-dasharray": "7 4" },
  };

  // Null where there is nothing to draw: no deck that is drawn, or no rectangle with a place.
  function plotDrawing(section, requirement, found) {
    if (section === undefined) return null;
    const { deck, shapes, pieces } = engine.plot_drawing(section, requirement, found);
    const placed = pieces
      .map((piece, index) => ({ ...piece, number: index + 1 }))
      .filter((piece) => piece.corners.length > 0);
    if (deck === "" || placed.length === 0) return null;
    const frame = frameOf(
      shapes.flatMap((shape) => shape.corners),
      placed.flatMap((piece) => piece.corners),
    );
    const svg = node("svg", {
      viewBox: "0 0 " + WIDTH + " " + tenth(frame.height),
      role: "img",
      class: "plan",
      "aria-label": inWords(deck, placed),
      fill: "none",
      stroke: "currentColor",
      "stroke-linejoin": "round",
    });
    svg.append(
      ...shapes.map((shape) => house(shape, frame)),
      centreLine(frame),
      ...placed.flatMap((piece) => rectangle(piece, frame)),
      ...sides(frame),
      ...scaleBar(frame),
    );
    return figure(svg, pieces);
  }

  // West, east, front and back of some corners.
  function ends(corners) {
    const across = corners.map(([x]) => x),
      depth = corners.map(([, y]) => y);
    return [Math.min(...across), Math.max(...across), Math.min(...depth), Math.max(...depth)];
  }

  // A rectangle a mile away would shrink the deck to a dot: the drawing ends 12 m off the house's own outlines.
  function frameOf(shapes, corners) {
    const [west, east, front, back] = ends(shapes);
    const within = (value, low, high) =>
      Math.max(low - MOST_BESIDE_M, Math.min(high + MOST_BESIDE_M, value));
    const [left, right, near, far] = ends([
      ...shapes,
      ...corners.map(([x, y]) => [within(x, west, east), within(y, front, back)]),
    ]);
    const half = Math.max(-left, right, 1) + 0.5,
      scale = (WIDTH - 2 * MARGIN) / (2 * half);
    return {
      half,
      scale,
      near: near - 0.5,
      far: far + 0.5,
      height: (far - near + 1) * scale + MARGIN + FOOT + 22,
    };
  }

  function at([x, y], frame) {
    return [MARGIN + (x + frame.half) * frame.scale, MARGIN + (frame.far - y) * frame.scale];
  }

  function tenth(value) {
    return String(Math.round(value * 10) / 10);
  }

  function points(corners, frame) {
    return corners.map((corner) => at(corner, frame).map(tenth).join(",")).join(" ");
  }

  function node(tag, attributes, ...children) {
    const made = document.createElementNS(SPACE, tag);
    for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
    made.append(...children);
    return made;
  }

  function area(corners, frame, { fill, ...look }) {
    return node("polygon", {
      points: points(corners, frame),
      ...look,
      ...(fill === undefined ? {} : { fill: "currentColor", "fill-opacity": fill }),
    });
  }

  function house({ kind, name, corners, hangs }, frame) {
    const drawn = area(
      corners,
      frame,
      hangs ? { "stroke-width": 1, "stroke-dasharray": "7 4" } : HOUSE[kind],
    );
    return node("g", {}, node("title", {}, name + " (" + kind + ")"), drawn);
  }

  function centreLine(frame) {
    return node("polyline", {
      points: points(
        [
          [0, frame.near],
          [0, frame.far],
        ],
        frame,
      ),
      "stroke-width": 0.7,
      "stroke-dasharray": "14 4 2 4",
    });
  }

  // What is short is crossed out, what is to ask is dashed and carries a sign: no colour is needed to tell them apart.
  function rectangle({ name, number, verdict, corners, lane }, frame) {
    const look = {
      ...(SHOW[verdict] || SHOW.fits),
      ...(lane ? { "stroke-dasharray": "1.5 3.5", fill: 0 } : {}),
    };
    const parts = [
      node("title", {}, number + " " + name + ": " + verdict),
      area(corners, frame, look),
    ];
    if (verdict === "short")
      parts.push(
        ...[
          [0, 2],
          [1, 3],
        ].map((pair) =>
          node("polyline", {
            points: points(
              pair.map((index) => corners[index]),
              frame,
            ),
            "stroke-width": 1,
          }),
        ),
      );
    const middle = [(corners[0][0] + corners[2][0]) / 2, (corners[0][1] + corners[2][1]) / 2];
    return [
      node(
        "g",
        { class: "plot-" + verdict.split(",")[0] },
        ...parts,
        words(middle, number + (SIGNS[verdict] || ""), frame, { "font-weight": 600 }, [0, 6]),
      ),
    ];
  }

  function words(place, text, frame, more, [right, down]) {
    const [x, y] = at(place, frame);
    const look = {
      "font-size": 18,
      "text-anchor": "middle",
      fill: "currentColor",
      stroke: "var(--paper)",
      "stroke-width": 3,
      "paint-order": "stroke",
    };
    return node("text", { x: tenth(x + right), y: tenth(y + down), ...look, ...more }, text);
  }

  function sides(frame) {
    return [
      words([-frame.half, frame.far], "← stage right", frame, { "text-anchor": "start" }, [0, -8]),
      words([frame.half, frame.far], "stage left →", frame, { "text-anchor": "end" }, [0, -8]),
    ];
  }

  function scaleBar(frame) {
    const y = frame.height - 18,
      size = { "font-size": 18, fill: "currentColor", stroke: "none" };
    const bar = (x, length, text) => [
      node("path", {
        d: "M" + tenth(x) + " " + tenth(y - 4) + "v8m0 -4h" + tenth(length) + "m0 -4v8",
        "stroke-width": 1.2,
      }),
      node("text", { x: tenth(x + length + 6), y: tenth(y + 6), ...size }, text),
    ];
    const round = (most) => [20, 10, 5, 2, 1].find((each) => each <= most) || 1;
    const metres = round(frame.half / 2),
      feet = round(frame.half / 2 / FOOT_M);
    return [
      ...bar(MARGIN, metres * frame.scale, metres + " m"),
      ...bar(MARGIN + metres * frame.scale + 70, feet * FOOT_M * frame.scale, feet + " ft"),
    ];
  }

  function inWords(deck, placed) {
    return (
      "Plan of " +
      deck +
      ", audience at the bottom. " +
      placed
        .map(({ name, number, verdict }) => number + " " + name + ", " + verdict + ".")
        .join(" ")
    );
  }

  function figure(svg, pieces) {
    const list = document.createElement("ol");
    for (const { name, words } of pieces) {
      const line = document.createElement("li");
      line.textContent = name + ": " + words;
      list.append(line);
    }
    const caption = document.createElement("figcaption");
    caption.append(
      "Audience at the bottom. Crossed out: short. Dashed: to ask. Dotted: a lane.",
      list,
    );
    const whole = document.createElement("figure");
    whole.className = "check-plan";
    whole.append(svg, caption);
    return whole;
  }

  Object.assign(fit, { plotDrawing });
})((window.housefit = window.housefit || {}));
