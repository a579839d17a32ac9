// A stage plot drawn on the deck that it was judged on: numbers in the drawing, names and verdicts in the list below it. Built of nodes, never of text.
(function (fit) {
  "use strict";
  const engine = (window.housecheck = window.housecheck || {});
  const TOUCHING_M = 0.025;
  const SPACE = "http://www.w3.org/2000/svg";
  const WIDTH = 520, MARGIN = 26, FOOT = 26, FOOT_M = 0.3048;
  const SIGNS = { "fits, with a note": " ~", ask: " ?" };
  const MOST_BESIDE_M = 12;
  const HOUSE = { deck: { "stroke-width": 2.2, fill: 0.04 }, wing: { "stroke-width": 0.8, fill: 0.05 }, zone: { "stroke-width": 1, "stroke-dasharray": "2 3" }, obstruction: { "stroke-width": 1, fill: 0.55 } };
  const SHOW = { fits: { "stroke-width": 1.2, fill: 0.12 }, short: { "stroke-width": 2.4 }, ask: { "stroke-width": 1.6, "stroke-dasharray": "7 4" } };

  // Null where there is nothing to draw: no deck that is drawn, or no rectangle with a place.
  function plotDrawing(pack, requirement, found) {
    const section = (pack.sections.find((section) => section.key === "stage") || null);
    const deck = section === null || found.fact === null ? undefined : section.items.find((item) => item.key === found.fact.key);
    const placed = requirement.rectangles.map((wish, index) => ({ wish, number: index + 1, verdict: verdictOf(wish, found) })).filter(({ wish }) => wish.across_m !== null);
    if (deck === undefined || placed.length === 0) return null;
    const shapes = shapesOf(section, deck);
    const frame = frameOf(shapes.flatMap((outline) => outline.corners), placed.flatMap(({ wish }) => cornersOf(wish)));
    const svg = node("svg", { viewBox: "0 0 " + WIDTH + " " + tenth(frame.height), role: "img", class: "plan", "aria-label": inWords(deck, placed), fill: "none", stroke: "currentColor", "stroke-linejoin": "round" });
    svg.append(...shapes.map((outline) => house(outline, section, frame)), centreLine(frame), ...placed.flatMap((each) => rectangle(each, frame)), ...sides(frame), ...scaleBar(frame));
    return figure(svg, requirement, found);
  }

  // The deck, the wings, what is in the way, and the zones that belong to a floor that is drawn.
  function shapesOf(section, deck) {
    const drawn = section.outlines.filter((outline) => outline.corners.length > 2 && (outline.kind !== "deck" || outline.name === deck.name));
    const floors = drawn.filter((outline) => ["deck", "wing"].includes(outline.kind));
    return drawn.filter((outline) => {
      const [left, right, near, far] = engine.box_around(outline.corners);
      const whole = engine.rectangle((left + right) / 2, (near + far) / 2, right - left, far - near, 0);
      return outline.kind !== "zone" || floors.some((floor) => engine.meets(whole, floor.corners, TOUCHING_M));
    });
  }

  function verdictOf(wish, found) {
    const part = found.parts.find((each) => each.title === wish.name && each.line === wish.line);
    return part === undefined ? "fits" : part.verdict;
  }

  function cornersOf(wish) {
    return engine.corners_of(engine.rectangle(wish.across_m, wish.upstage_m, wish.width_m, wish.depth_m, wish.turned_deg));
  }

  // A rectangle a mile away would shrink the deck to a dot: the drawing ends 12 m off the house's own outlines.
  function frameOf(shapes, corners) {
    const [west, east, front, back] = engine.box_around(shapes);
    const within = (value, low, high) => Math.max(low - MOST_BESIDE_M, Math.min(high + MOST_BESIDE_M, value));
    const [left, right, near, far] = engine.box_around([...shapes, ...corners.map(([x, y]) => [within(x, west, east), within(y, front, back)])]);
    const half = Math.max(-left, right, 1) + 0.5, scale = (WIDTH - 2 * MARGIN) / (2 * half);
    return { half, scale, near: near - 0.5, far: far + 0.5, height: (far - near + 1) * scale + MARGIN + FOOT + 22 };
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
    return node("polygon", { points: points(corners, frame), ...look, ...(fill === undefined ? {} : { fill: "currentColor", "fill-opacity": fill }) });
  }

  function house(outline, section, frame) {
    const item = section.items.find((each) => each.kind === outline.kind && each.name === outline.name);
    const hangs = outline.kind === "obstruction" && item !== undefined && Object.hasOwn(item.values, "from_height");
    const drawn = area(outline.corners, frame, hangs ? { "stroke-width": 1, "stroke-dasharray": "7 4" } : HOUSE[outline.kind]);
    return node("g", {}, node("title", {}, outline.name + " (" + outline.kind + ")"), drawn);
  }

  function centreLine(frame) {
    return node("polyline", { points: points([[0, frame.near], [0, frame.far]], frame), "stroke-width": 0.7, "stroke-dasharray": "14 4 2 4" });
  }

  // What is short is crossed out, what is to ask is dashed and carries a sign: no colour is needed to tell them apart.
  function rectangle({ wish, number, verdict }, frame) {
    const corners = cornersOf(wish), look = { ...(SHOW[verdict] || SHOW.fits), ...(wish.lane ? { "stroke-dasharray": "1.5 3.5", fill: 0 } : {}) };
    const parts = [node("title", {}, number + " " + wish.name + ": " + verdict), area(corners, frame, look)];
    if (verdict === "short") parts.push(...[[0, 2], [1, 3]].map((pair) => node("polyline", { points: points(pair.map((index) => corners[index]), frame), "stroke-width": 1 })));
    const middle = [(corners[0][0] + corners[2][0]) / 2, (corners[0][1] + corners[2][1]) / 2];
    return [node("g", { class: "plot-" + verdict.split(",")[0] }, ...parts, words(middle, number + (SIGNS[verdict] || ""), frame, { "font-weight": 600 }, [0, 6]))];
  }

  function words(place, text, frame, more, [right, down]) {
    const [x, y] = at(place, frame);
    const look = { "font-size": 18, "text-anchor": "middle", fill: "currentColor", stroke: "var(--paper)", "stroke-width": 3, "paint-order": "stroke" };
    return node("text", { x: tenth(x + right), y: tenth(y + down), ...look, ...more }, text);
  }

  function sides(frame) {
    return [words([-frame.half, frame.far], "← stage right", frame, { "text-anchor": "start" }, [0, -8]), words([frame.half, frame.far], "stage left →", frame, { "text-anchor": "end" }, [0, -8])];
  }

  function scaleBar(frame) {
    const y = frame.height - 18, size = { "font-size": 18, fill: "currentColor", stroke: "none" };
    const bar = (x, length, text) => [
      node("path", { d: "M" + tenth(x) + " " + tenth(y - 4) + "v8m0 -4h" + tenth(length) + "m0 -4v8", "stroke-width": 1.2 }),
      node("text", { x: tenth(x + length + 6), y: tenth(y + 6), ...size }, text),
    ];
    const round = (most) => [20, 10, 5, 2, 1].find((each) => each <= most) || 1;
    const metres = round(frame.half / 2), feet = round(frame.half / 2 / FOOT_M);
    return [...bar(MARGIN, metres * frame.scale, metres + " m"), ...bar(MARGIN + metres * frame.scale + 70, feet * FOOT_M * frame.scale, feet + " ft")];
  }

  function inWords(deck, placed) {
    return "Plan of " + deck.name + ", audience at the bottom. " + placed.map(({ wish, number, verdict }) => number + " " + wish.name + ", " + verdict + ".").join(" ");
  }

  function figure(svg, requirement, found) {
    const list = document.createElement("ol");
    for (const wish of requirement.rectangles) {
      const line = document.createElement("li");
      const verdict = wish.across_m === null && verdictOf(wish, found) === "fits" ? "no place given" : verdictOf(wish, found);
      line.textContent = wish.name + ": " + verdict;
      list.append(line);
    }
    const caption = document.createElement("figcaption");
    caption.append("Audience at the bottom. Crossed out: short. Dashed: to ask. Dotted: a lane.", list);
    const whole = document.createElement("figure");
    whole.className = "check-plan";
    whole.append(svg, caption);
    return whole;
  }

  Object.assign(fit, { plotDrawing });
})((window.housefit = window.housefit || {}));
