// How a line stands that a link or the search leads to: what is wrong with it, in words; nothing where it stands as it should.
(() => {
  const NEAR = 1;
  const ROOMY = 8;
  const GAP = 17;
  const box = (element) => element.getBoundingClientRect();
  const bar = () => box(document.querySelector(".top")).bottom;

  // The part of the page in which a cell can be seen at all: the page below its bar, within the frame that scrolls.
  function room(frame) {
    const page = {
      left: 0,
      right: document.documentElement.clientWidth,
      top: bar(),
      bottom: innerHeight,
    };
    if (frame === null || getComputedStyle(frame).overflowX === "visible") return page;
    const own = box(frame);
    return {
      left: Math.max(0, own.left),
      right: Math.min(page.right, own.left + frame.clientWidth),
      top: Math.max(page.top, own.top),
      bottom: Math.min(page.bottom, own.top + frame.clientHeight),
    };
  }
  function clipped(element, within) {
    const own = box(element);
    return {
      left: Math.max(own.left, within.left),
      right: Math.min(own.right, within.right),
      top: Math.max(own.top, within.top),
      bottom: Math.min(own.bottom, within.bottom),
    };
  }
  const seen = (part) => part.right - part.left > ROOMY && part.bottom - part.top > ROOMY;
  function onTop(part, within) {
    const found = document.elementFromPoint(
      (part.left + part.right) / 2,
      (part.top + part.bottom) / 2,
    );
    return found !== null && within.contains(found);
  }

  // The lower edge of what stands over a row, and what is wrong with it. A table that a phone shows as lists names each value itself.
  function heading(row, within, wrong) {
    const table = row.closest("table");
    if (table === null) return within.top;
    const heads = [...table.tHead.rows[0].cells];
    if (getComputedStyle(row).display !== "table-row") {
      const unnamed = [...row.querySelectorAll("td")].filter(
        (cell) => getComputedStyle(cell, "::before").content.length < 3,
      );
      if (unnamed.length > 0) wrong.push("values without a name");
      return within.top;
    }
    const shown = heads
      .map((head) => [head, clipped(head, within)])
      .filter(
        ([head]) => box(head).left < within.right - ROOMY && box(head).right > within.left + ROOMY,
      );
    if (
      shown.some(
        ([head, part]) => !seen(part) || box(head).top < within.top - NEAR || !onTop(part, head),
      )
    )
      wrong.push("its head is not in sight");
    return Math.max(...heads.map((head) => box(head).bottom));
  }

  function marking(row) {
    const part = row.querySelector("th, dt") || row;
    const style = (element) => getComputedStyle(element);
    const told = [row, part]
      .map((each) => style(each).boxShadow + style(each).outlineStyle + style(each).borderTopWidth)
      .join();
    return { ground: [row, part].map((each) => style(each).backgroundColor).join(), told };
  }
  function marked(row, wrong) {
    const other = [...row.parentElement.children].find(
      (each) => each !== row && each.localName === row.localName && each.id !== row.id,
    );
    if (!other || !row.matches(":target"))
      return row.matches(":target") ? undefined : wrong.push("it is not the target");
    const own = marking(row),
      neighbour = marking(other);
    if (own.ground === neighbour.ground) wrong.push("its ground is its neighbour's");
    if (own.told === neighbour.told) wrong.push("it is marked by colour alone");
  }

  window.standing = (id) => {
    const row = document.getElementById(id),
      wrong = [];
    if (row === null || box(row).height === 0) return ["it cannot be seen at all"];
    const within = room(row.closest(".table"));
    const top = heading(row, within, wrong);
    const own = box(row);
    if (own.top < top - NEAR) wrong.push("it begins above the lower edge of its head");
    // Of a row higher than the room below its head, the top is read first.
    const higher = own.height > within.bottom - own.top && own.top <= top + GAP;
    if (own.bottom > within.bottom + NEAR && !higher) wrong.push("it does not end in sight");
    const cells = [...row.children]
      .map((cell) => [cell, clipped(cell, within)])
      .filter(([cell]) => box(cell).left < within.right - ROOMY);
    const ends = higher
      ? [cells[0]]
      : row.localName === "tr"
        ? [cells[0], cells.filter(([, part]) => part.right - part.left > ROOMY).at(-1)]
        : cells;
    if (ends.some((end) => !end || !seen(end[1]) || !onTop(end[1], row)))
      wrong.push("something covers it");
    marked(row, wrong);
    return wrong;
  };

  // Each line in turn, as if a link on this page led to it.
  window.allStanding = async (ids) => {
    const found = {};
    for (const id of ids) {
      const arrived = new Promise((done) => addEventListener("hashchange", done, { once: true }));
      location.hash = id;
      await arrived;
      const wrong = window.standing(id);
      if (wrong.length > 0) found[id] = wrong;
    }
    return found;
  };
})();
