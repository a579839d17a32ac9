// What both languages have and write differently. Nothing here knows of shows or houses.
const py = (() => {
  const fault = (words) => {
    throw new Error(words);
  };

  class Absent extends Error {}

  // Order of texts is by code point: the second half of a pair sorts past every single unit.
  function compareText(one, other) {
    if (one === other) return 0;
    const size = Math.min(one.length, other.length);
    for (let place = 0; place < size; place += 1) {
      const a = one.charCodeAt(place),
        b = other.charCodeAt(place);
      if (a !== b) return unit(a) < unit(b) ? -1 : 1;
    }
    return one.length < other.length ? -1 : 1;
  }
  const unit = (code) => (code >= 0xd800 && code <= 0xdfff ? code + 0x10000 : code);

  function compare(one, other) {
    if (typeof one === "string" && typeof other === "string") return compareText(one, other);
    if (Array.isArray(one) && Array.isArray(other)) {
      const size = Math.min(one.length, other.length);
      for (let place = 0; place < size; place += 1) {
        const order = compare(one[place], other[place]);
        if (order !== 0) return order;
      }
      return one.length - other.length;
    }
    if (
      typeof one === "string" ||
      typeof other === "string" ||
      Array.isArray(one) ||
      Array.isArray(other) ||
      one === null ||
      other === null
    )
      fault("compares what has no order");
    return one < other ? -1 : one > other ? 1 : 0;
  }

  function equal(one, other) {
    if (one === other) return true;
    if (Array.isArray(one))
      return (
        Array.isArray(other) &&
        one.length === other.length &&
        one.every((item, place) => equal(item, other[place]))
      );
    if (one instanceof Map)
      return (
        other instanceof Map &&
        one.size === other.size &&
        [...one].every(([key, value]) => other.has(key) && equal(value, other.get(key)))
      );
    if (one instanceof Set)
      return (
        other instanceof Set && one.size === other.size && [...one].every((item) => other.has(item))
      );
    if (
      one === null ||
      other === null ||
      typeof one !== "object" ||
      typeof other !== "object" ||
      Array.isArray(other)
    )
      return false;
    const names = Object.keys(one);
    return (
      names.length === Object.keys(other).length &&
      names.every((name) => Object.hasOwn(other, name) && equal(one[name], other[name]))
    );
  }

  function sort(items, key, backwards) {
    const sign = backwards ? -1 : 1;
    if (key === null) return items.sort((one, other) => sign * compare(one, other));
    const keyed = items.map((item) => [key(item), item]);
    keyed.sort((one, other) => sign * compare(one[0], other[0]));
    keyed.forEach((pair, place) => {
      items[place] = pair[1];
    });
    return items;
  }

  function extreme(items, key, otherwise, sign) {
    if (items.length === 0)
      return otherwise === undefined ? fault("takes the extreme of nothing") : otherwise;
    let best = items[0],
      least = key === null ? best : key(best);
    for (const item of items.slice(1)) {
      const value = key === null ? item : key(item);
      if (sign * compare(value, least) < 0) {
        best = item;
        least = value;
      }
    }
    return best;
  }

  // Shewchuk's exact sum with the last half rounded to even, as Python's fsum.
  function fsum(items) {
    const partials = [];
    for (let x of items) {
      let kept = 0;
      for (let y of partials) {
        if (Math.abs(x) < Math.abs(y)) [x, y] = [y, x];
        const high = x + y,
          low = y - (high - x);
        if (low !== 0) {
          partials[kept] = low;
          kept += 1;
        }
        x = high;
      }
      partials.length = kept;
      // As Python: a sum of nothing is 0, never -0.
      if (x !== 0) partials.push(x);
    }
    let count = partials.length,
      high = 0,
      low = 0;
    if (count > 0) {
      count -= 1;
      high = partials[count];
      while (count > 0) {
        const x = high,
          y = partials[count - 1];
        count -= 1;
        high = x + y;
        low = y - (high - x);
        if (low !== 0) break;
      }
      if (
        count > 0 &&
        ((low < 0 && partials[count - 1] < 0) || (low > 0 && partials[count - 1] > 0))
      ) {
        const y = low * 2,
          x = high + y;
        if (y === x - high) high = x;
      }
    }
    return high;
  }

  function mod(one, other) {
    if (other === 0) fault("divides by zero");
    const rest = one % other;
    return rest !== 0 && rest < 0 !== other < 0 ? rest + other : rest + 0;
  }

  function floordiv(one, other) {
    const rest = mod(one, other),
      quotient = (one - rest) / other,
      low = Math.floor(quotient);
    return (quotient - low > 0.5 ? low + 1 : low) + 0;
  }

  // Texts are counted in characters; only texts with a character past the first plane need the long way.
  const WIDE = /[\ud800-\udbff][\udc00-\udfff]/;
  const characters = (text) => (WIDE.test(text) ? [...text] : text);
  const length = (text) => characters(text).length;
  function character(text, place) {
    const all = characters(text),
      at = place < 0 ? all.length + place : place;
    return at >= 0 && at < all.length ? all[at] : fault("takes a character that is not there");
  }
  function slice(held, from, to) {
    const size = typeof held === "string" ? characters(held) : held;
    const part = size.slice(from ?? 0, to ?? size.length);
    return typeof held === "string" && typeof part !== "string" ? part.join("") : part;
  }
  function place(text, at) {
    return at < 0 || !WIDE.test(text) ? at : [...text.slice(0, at)].length;
  }
  function strip(text, unwanted, left, right) {
    const all = [...text],
      drop = new Set([...unwanted]);
    let from = 0,
      to = all.length;
    while (left && from < to && drop.has(all[from])) from += 1;
    while (right && to > from && drop.has(all[to - 1])) to -= 1;
    return all.slice(from, to).join("");
  }

  function at(items, index) {
    const where = index < 0 ? items.length + index : index;
    return where >= 0 && where < items.length
      ? items[where]
      : fault("takes a place that is not there");
  }
  function index(items, item) {
    const where = items.findIndex((other) => equal(other, item));
    return where < 0 ? fault("looks for what is not there") : where;
  }
  function take(map, key, otherwise) {
    if (!map.has(key))
      return otherwise === undefined ? fault("takes a key that is not there") : otherwise;
    const value = map.get(key);
    map.delete(key);
    return value;
  }

  // Exact fractions: whole numbers of any size, as digits.
  const fraction = ({ top, bottom }) => [BigInt(top), BigInt(bottom)];
  function ratio(top, bottom) {
    let [one, other] = [top < 0n ? -top : top, bottom];
    while (other !== 0n) [one, other] = [other, one % other];
    return { top: String(top / one), bottom: String(bottom / one) };
  }
  function ratio_sum(one, other) {
    const [[top, bottom], [more, under]] = [fraction(one), fraction(other)];
    return ratio(top * under + more * bottom, bottom * under);
  }
  function ratio_product(one, other) {
    const [[top, bottom], [more, under]] = [fraction(one), fraction(other)];
    return ratio(top * more, bottom * under);
  }
  // A quotient of 66 bits, its last bit set where something is left over: so Number() rounds once and right.
  function ratio_float(given) {
    const [top, bottom] = fraction(given);
    if (top === 0n) return 0;
    const size = top < 0n ? -top : top,
      bits = (number) => number.toString(2).length;
    const shift = bits(bottom) - bits(size) + 66;
    const [dividend, divisor] =
      shift >= 0 ? [size << BigInt(shift), bottom] : [size, bottom << BigInt(-shift)];
    const quotient = (dividend / divisor) | (dividend % divisor === 0n ? 0n : 1n);
    return (top < 0n ? -1 : 1) * Number(quotient) * 2 ** -shift;
  }

  function plain(value) {
    if (Array.isArray(value)) return value.map(plain);
    if (value instanceof Map)
      return Object.fromEntries([...value].map(([key, part]) => [key, plain(part)]));
    if (value === null || typeof value !== "object") return value;
    return Object.fromEntries(
      Object.keys(value)
        .filter((name) => value[name] !== undefined)
        .map((name) => [name, plain(value[name])]),
    );
  }

  return {
    absent: () => {
      throw new Absent("calls what is not loaded yet");
    },
    is_failing: (action) => {
      try {
        action();
      } catch (failure) {
        // What a page forgot to load is no fault of one part: no net may hold it.
        if (failure instanceof Absent) throw failure;
        console.error(failure);
        return true;
      }
      return false;
    },
    code_of: (char) => char.codePointAt(0),
    char_of: (code) => String.fromCodePoint(code),
    ratio_sum,
    ratio_product,
    ratio_float,
    compare,
    equal,
    fsum,
    mod,
    floordiv,
    length,
    character,
    slice,
    strip,
    at,
    index,
    take,
    plain,
    sort,
    div: (one, other) => (other === 0 ? fault("divides by zero") : one / other),
    sqrt: (value) => (value < 0 ? fault("takes the root of less than nothing") : Math.sqrt(value)),
    sorted: (items, key, backwards) => sort([...items], key, backwards),
    min: (items, key, otherwise) => extreme(items, key, otherwise, 1),
    max: (items, key, otherwise) => extreme(items, key, otherwise, -1),
    contains: (items, item) => items.some((other) => equal(other, item)),
    count: (items, item) => items.filter((other) => equal(other, item)).length,
    count_text: (text, part) => text.split(part).length - 1,
    value: (map, key) => (map.has(key) ? map.get(key) : fault("reads a key that is not there")),
    get: (map, key, otherwise) => (map.has(key) ? map.get(key) : otherwise),
    setdefault: (map, key, value) => (map.has(key) ? map.get(key) : map.set(key, value).get(key)),
    update: (map, other) => {
      for (const [key, value] of other) map.set(key, value);
    },
    put: (items, where, value) => {
      at(items, where);
      items[where < 0 ? items.length + where : where] = value;
    },
    insert: (items, where, item) => {
      items.splice(where, 0, item);
    },
    pop: (items, where) => {
      at(items, where);
      return items.splice(where < 0 ? items.length + where : where, 1)[0];
    },
    extend: (items, more) => {
      for (const item of [...more]) items.push(item);
    },
    repeated: (items, times) => Array.from({ length: Math.max(0, times) }, () => items).flat(1),
    range: (from, to, step = 1) => {
      const [first, end] = to === undefined ? [0, from] : [from, to];
      return Array.from(
        { length: Math.max(0, Math.ceil((end - first) / step)) },
        (_, place) => first + place * step,
      );
    },
    enumerated: (items, start) => items.map((item, place) => [place + start, item]),
    zipped: (lists) =>
      lists.every((list) => list.length === lists[0].length)
        ? lists[0].map((_, place) => lists.map((list) => list[place]))
        : fault("pairs lists of unlike length"),
    zipped_to_shortest: (lists) =>
      Array.from({ length: Math.min(...lists.map((list) => list.length)) }, (_, place) =>
        lists.map((list) => list[place]),
      ),
    starts: (text, part) => text.startsWith(part),
    ends: (text, part) => text.endsWith(part),
    find: (text, part) => place(text, text.indexOf(part)),
    rfind: (text, part) => place(text, text.lastIndexOf(part)),
    remove_prefix: (text, part) => (text.startsWith(part) ? text.slice(part.length) : text),
    remove_suffix: (text, part) =>
      part !== "" && text.endsWith(part) ? text.slice(0, -part.length) : text,
    whole: (text) =>
      /^[0-9]+$/.test(text) ? Number(text) : fault("reads as a whole number what is none"),
  };
})();
