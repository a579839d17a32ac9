// Quantities as a crew writes them, exact: a number is a fraction of whole numbers until the last step. The units come with the pack.
(function (fit) {
  "use strict";
  const MOST_DIGITS = 15;
  const LONGEST = 120;
  const VULGAR = { "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3" };
  const SIGNS = { "′": "'", "’": "'", "″": '"', "”": '"', "“": '"', "−": "-", "²": "2", "³": "3" };

  const DIRECTIONS = {
    across: { sl: 1, "stage left": 1, sr: -1, "stage right": -1 },
    depth: { us: 1, upstage: 1, ds: -1, downstage: -1 },
    height: { up: 1, down: -1 },
  };
  const POSITION = { across: "4.2 m SL", depth: "2 m US", height: "1.4 m up" };
  const CENTRE = ["centre", "center", "on centre", "on center"];
  const ELSEWHERE = [...Object.values(DIRECTIONS).flatMap((each) => Object.keys(each)), "house left", "house right", "left", "right"];

  class Unreadable extends Error {}

  function plain(text) {
    const spelled = text.replace(/([0-9]?)([½¼¾⅛⅜⅝⅞⅓⅔])/g, (_, digit, sign) => (digit ? digit + " " : "") + VULGAR[sign]);
    return spelled.replace(/[′’″”“−²³]/g, (sign) => SIGNS[sign]).trim().split(/\s+/).join(" ").replaceAll("''", '"');
  }

  function whole(digits) {
    if (digits.length > MOST_DIGITS) throw new Unreadable("has more digits than anybody measures; round it");
    return BigInt(digits);
  }

  // The number at the front of a text: [top, bottom, rest].
  function leading(text) {
    const sign = text.startsWith("-") ? -1n : 1n;
    const body = sign < 0n ? text.slice(1) : text;
    const part = /^(?:([0-9]+)[ -])?([0-9]+)\/([0-9]+)/.exec(body);
    if (part) {
      const bottom = whole(part[3]);
      if (bottom === 0n) throw new Unreadable("divides by zero");
      return [sign * (whole(part[1] || "0") * bottom + whole(part[2])), bottom, body.slice(part[0].length).trimStart()];
    }
    const found = /^([0-9][0-9,]*)?(\.[0-9]+)?/.exec(body);
    if (!found[0]) throw new Unreadable("does not start with a number");
    let digits = found[1] || "0";
    if (digits.includes(",")) {
      if (!/^[1-9][0-9]{0,2}(,[0-9]{3})+$/.test(digits)) throw new Unreadable("has a comma that does not separate thousands; write a point for decimals");
      digits = digits.replaceAll(",", "");
    }
    const decimals = (found[2] || ".").slice(1);
    if (/^[0-9]{1,3}( [0-9]{3})+(?![0-9])/.test(body)) throw new Unreadable("has a space inside the number");
    return [sign * whole(digits + decimals), 10n ** BigInt(decimals.length), body.slice(found[0].length).trimStart()];
  }

  function unitNamed(name, units) {
    if (Object.hasOwn(units, name)) return units[name];
    const same = Object.keys(units).filter((known) => name.length > 1 && known.toLowerCase() === name.toLowerCase()).map((known) => units[known]);
    if (new Set(same.map((unit) => unit.symbol)).size === 1) return same[0];
    throw new Unreadable("has the unit '" + name.slice(0, 20) + "', which is not known here; write one of: " + shortList(units));
  }

  function shortList(units) {
    return [...new Set(Object.values(units).map((unit) => unit.symbol))].join(", ");
  }

  function single(text, units) {
    const [top, bottom, rest] = leading(text);
    if (rest === "") throw new Unreadable("needs a unit, such as " + shortList(units));
    const more = /^([A-Za-z]+|')\s*-?\s*([0-9.].*)$/.exec(rest);
    if (more && Object.hasOwn(units, more[1]) && units[more[1]].smaller) {
      const unit = units[more[1]], smaller = units[unit.smaller];
      const [second, under, after] = leading(more[2]);
      if (bottom !== 1n) throw new Unreadable("has a fraction and then a smaller unit");
      if (after === "" || unitNamed(after, units).symbol !== smaller.symbol) throw new Unreadable("needs " + smaller.symbol + " after " + unit.symbol);
      if (second >= BigInt(unit.count) * under) throw new Unreadable("has too many " + smaller.symbol + " after " + unit.symbol);
      const size = (top < 0n ? -top : top) * BigInt(unit.count) * under + second;
      const sign = text.startsWith("-") ? -1n : 1n;
      return { si: ratio(sign * size * BigInt(smaller.top), under * BigInt(smaller.bottom)), unit };
    }
    const unit = unitNamed(rest, units);
    return { si: ratio(top * BigInt(unit.top), bottom * BigInt(unit.bottom)), unit };
  }

  // A fraction as the nearest number: enough bits for the division to be exact, and one more that tells of a remainder.
  function ratio(top, bottom) {
    const size = top < 0n ? -top : top;
    const shift = BigInt(Math.max(0, 70 + bottom.toString(2).length - size.toString(2).length));
    const quotient = (size << shift) / bottom;
    const sticky = quotient * bottom === size << shift ? quotient : quotient | 1n;
    return (top < 0n ? -1 : 1) * (Number(sticky) / 2 ** Number(shift));
  }

  // The first wording of a text. A second one, in brackets or after a slash, is left to the house's own check.
  function firstWording(text) {
    if (text.length > LONGEST * 2) throw new Unreadable("is too long");
    const line = plain(text).replace(/ ?\(\s*[-.0-9][^)]*\)$/, "").replace(/ \/ .*$/, "");
    if (line === "") throw new Unreadable("is empty");
    return line;
  }

  // A position in metres: across to stage left, depth to upstage, height above the deck.
  function position(text, way, units) {
    const line = firstWording(text), found = / ?([A-Za-z]+(?: [A-Za-z]+)?)$/.exec(line);
    if (way === "across" && CENTRE.includes(line.toLowerCase())) return 0;
    const last = found === null ? [""] : found[1].includes(" ") ? [found[1], found[1].split(" ")[1]] : [found[1]];
    const word = last.find((each) => Object.hasOwn(DIRECTIONS[way], each.toLowerCase()));
    if (word === undefined) {
      if (last.some((each) => ELSEWHERE.includes(each.toLowerCase()))) throw new Unreadable("goes another way; write it like " + POSITION[way]);
      const { si } = single(line, units.length);
      if (si !== 0 && way !== "height") throw new Unreadable("does not say which way; write it like " + POSITION[way]);
      return si + 0;
    }
    const size = line.slice(0, line.length - word.length).trimEnd();
    const { si } = single(size, units.length);
    if (size.startsWith("-")) throw new Unreadable("has a minus and a direction; write it like " + POSITION[way]);
    return si * DIRECTIONS[way][word.toLowerCase()] + 0;
  }

  // A value of a kind as { si, weighting }.
  function quantity(text, kind, units) {
    const line = firstWording(text);
    const found = single(line, units[kind]);
    if (found.si < 0 && !["level", "angle"].includes(kind)) throw new Unreadable("is below zero");
    return { si: found.si, weighting: kind === "level" ? found.unit.symbol.slice(3, 4) : "" };
  }

  function count(text) {
    const [top, bottom, rest] = leading(plain(text));
    if (rest !== "" || bottom !== 1n) throw new Unreadable("is not a whole number");
    if (top < 0n || plain(text).startsWith("-")) throw new Unreadable("is below zero");
    return Number(top);
  }

  function timeOfDay(text) {
    const found = /^([0-9]{1,2})(?::([0-9]{2}))? ?([aApP]\.?[mM]\.?)?$/.exec(plain(text));
    if (!found || !(found[2] || found[3])) throw new Unreadable("is not a time of day; write it like 22:30");
    let hour = Number(found[1]);
    const minute = Number(found[2] || 0);
    if (found[3]) {
      if (hour < 1 || hour > 12) throw new Unreadable("is not on the clock");
      hour = (hour % 12) + (/[pP]/.test(found[3][0]) ? 12 : 0);
    }
    if (minute > 59 || hour * 60 + minute > 1440) throw new Unreadable("is not on the clock");
    return (hour * 60 + minute) * 60;
  }

  function yesNo(text) {
    const line = text.trim().toLowerCase();
    if (!["yes", "true", "no", "false"].includes(line)) throw new Unreadable("is neither yes nor no");
    return ["yes", "true"].includes(line) ? "yes" : "no";
  }

  Object.assign(fit, { Unreadable, quantity, position, count, timeOfDay, yesNo, folded: (text) => text.trim().split(/\s+/).join(" ") });
})((window.housefit = window.housefit || {}));
