// A rider file to plain data and back: the part of YAML that riders use. What is not understood is refused with its line, never guessed.
(function (fit) {
  "use strict";
  const LARGEST = 200000;
  const DEEPEST = 20;
  // Where a value can begin, and a quote with it; within a word, as in 20'-6", a quote is a sign.
  const OPENS = /(^\s*|[,[{]\s*|:\s+|^\s*(-\s+)+)$/;

  class Refused extends Error {
    constructor(line, reason) {
      super("Line " + line + " " + reason);
      this.line = line;
    }
  }

  // Lines with their indentation, without comments. A comment begins at the start or after a blank, outside quotes.
  function linesOf(text) {
    const found = [];
    for (const [index, raw] of text.replace(/^\ufeff/, "").split(/\r\n?|\n/).entries()) {
      if (/[\u0000-\u0008\u000b-\u001f\u007f\u0085\u200b-\u200f\u2028-\u202e\u2066-\u2069]/.test(raw)) throw new Refused(index + 1, "holds a character that cannot be seen.");
      const content = withoutComment(raw, index + 1).trimEnd();
      const indent = content.length - content.trimStart().length;
      if (content.slice(0, indent).includes("\t")) throw new Refused(index + 1, "is indented with a tab; indent with spaces.");
      if (content.trim() !== "" && !(content === "---" && found.length === 0)) found.push({ number: index + 1, indent, content: content.trim() });
    }
    return found;
  }

  function withoutComment(raw, number) {
    let quote = "";
    for (let index = 0; index < raw.length; index += 1) {
      const char = raw[index];
      if (quote !== "") {
        if (char === "\\" && quote === '"') index += 1;
        else if (char === quote) quote = "";
      } else if (/["']/.test(char) && OPENS.test(raw.slice(0, index))) {
        quote = char;
      } else if (char === "#" && (index === 0 || /\s/.test(raw[index - 1]))) {
        return raw.slice(0, index);
      }
    }
    if (quote !== "") throw new Refused(number, "opens a quote that is never closed.");
    return raw;
  }

  function readRider(text) {
    if (text.length > LARGEST) throw new Refused(1, "begins a text that is too large for a rider.");
    const reader = { lines: linesOf(text), at: 0, places: new Map() };
    if (reader.lines.length === 0) throw new Refused(1, "is empty.");
    const data = block(reader, reader.lines[0].indent, 0);
    if (reader.at < reader.lines.length) throw new Refused(reader.lines[reader.at].number, "does not line up with what is above.");
    if (Array.isArray(data) || typeof data !== "object") throw new Refused(1, "should begin with a key, such as act.");
    return { data, places: reader.places };
  }

  function block(reader, indent, depth) {
    if (depth > DEEPEST) throw new Refused(reader.lines[reader.at].number, "is nested too deeply.");
    const line = reader.lines[reader.at];
    return line.content === "-" || line.content.startsWith("- ") ? sequence(reader, indent, depth) : mapping(reader, indent, depth);
  }

  function sequence(reader, indent, depth) {
    const found = [], lines = [];
    reader.places.set(found, lines);
    while (reader.at < reader.lines.length) {
      const line = reader.lines[reader.at];
      if (line.indent !== indent || !(line.content === "-" || line.content.startsWith("- "))) break;
      const rest = line.content.slice(1).trimStart();
      lines.push(line.number);
      if (rest === "") {
        found.push(nested(reader, indent, depth));
      } else if (keyOf(rest, line.number) !== null) {
        const inner = indent + line.content.length - rest.length;
        reader.lines[reader.at] = { ...line, indent: inner, content: rest };
        found.push(mapping(reader, inner, depth + 1));
      } else {
        found.push(scalarOrFlow(reader, rest));
      }
    }
    if (reader.at < reader.lines.length && reader.lines[reader.at].indent > indent) throw new Refused(reader.lines[reader.at].number, "does not line up with the list above.");
    return found;
  }

  function nested(reader, indent, depth) {
    const number = reader.lines[reader.at].number;
    reader.at += 1;
    if (reader.at >= reader.lines.length || reader.lines[reader.at].indent <= indent) throw new Refused(number, "has no value.");
    return block(reader, reader.lines[reader.at].indent, depth + 1);
  }

  function mapping(reader, indent, depth) {
    const found = {}, lines = {};
    reader.places.set(found, { line: reader.lines[reader.at].number, keys: lines });
    while (reader.at < reader.lines.length && reader.lines[reader.at].indent === indent) {
      const line = reader.lines[reader.at];
      const split = keyOf(line.content, line.number);
      if (split === null) throw new Refused(line.number, "has no colon after a key.");
      const [key, rest] = split;
      add(found, key, line.number);
      lines[key] = line.number;
      if (rest !== "") {
        found[key] = scalarOrFlow(reader, rest);
      } else {
        reader.at += 1;
        const next = reader.lines[reader.at];
        const listBelow = next && next.indent === indent && (next.content === "-" || next.content.startsWith("- "));
        if (!next || (next.indent <= indent && !listBelow)) throw new Refused(line.number, "has no value.");
        found[key] = block(reader, next.indent, depth + 1);
        if (typeof found[key] === "object" && next) lines[key] = next.number;
      }
    }
    if (reader.at < reader.lines.length && reader.lines[reader.at].indent > indent) throw new Refused(reader.lines[reader.at].number, "does not line up with the keys above.");
    return found;
  }

  function add(found, key, number) {
    if (key === "__proto__" || key === "<<") throw new Refused(number, "has a key that cannot be read.");
    if (Object.hasOwn(found, key)) throw new Refused(number, "writes '" + key + "' a second time.");
  }

  // A key and what stands after its colon, or null where the text is no key.
  function keyOf(text, number) {
    if (/^[[{"'&*!|>%@`]/.test(text)) {
      if (/^[&*!|>%@`]/.test(text)) throw new Refused(number, "uses a sign of YAML that riders do not need; put the value in quotes.");
      return null;
    }
    const found = /^([^:]*?[^\s:])\s*:(?:\s+(.*))?$/.exec(text);
    return found ? [found[1], (found[2] || "").trim()] : null;
  }

  function scalarOrFlow(reader, text) {
    const number = reader.lines[reader.at].number;
    if (/^[[{]/.test(text)) {
      let whole = text;
      while (!closed(whole) && reader.at + 1 < reader.lines.length) {
        reader.at += 1;
        whole += " " + reader.lines[reader.at].content;
      }
      reader.at += 1;
      const flow = { text: whole, at: 0, number, places: reader.places, depth: 0 };
      const value = flowValue(flow);
      if (flow.text.slice(flow.at).trim() !== "") throw new Refused(number, "has words after a closing bracket.");
      return value;
    }
    reader.at += 1;
    const next = reader.lines[reader.at];
    if (next && next.indent > reader.lines[reader.at - 1].indent && keyOf(next.content, next.number) === null && !next.content.startsWith("- ")) {
      throw new Refused(next.number, "goes on from the line above; write a value on one line.");
    }
    return scalar(text, number);
  }

  function closed(text) {
    let depth = 0, quote = "";
    for (let index = 0; index < text.length; index += 1) {
      const char = text[index];
      if (quote !== "") {
        if (char === "\\" && quote === '"') index += 1;
        else if (char === quote) quote = "";
      } else if (/["']/.test(char) && OPENS.test(text.slice(0, index))) quote = char;
      else if (/[[{]/.test(char)) depth += 1;
      else if (/[\]}]/.test(char)) depth -= 1;
    }
    return depth <= 0;
  }

  function flowValue(flow) {
    flow.depth += 1;
    if (flow.depth > DEEPEST) throw new Refused(flow.number, "is nested too deeply.");
    skip(flow);
    const char = flow.text[flow.at];
    const value = char === "{" ? flowMapping(flow) : char === "[" ? flowList(flow) : flowScalar(flow);
    flow.depth -= 1;
    return value;
  }

  function skip(flow) {
    while (flow.text[flow.at] === " ") flow.at += 1;
  }

  function flowMapping(flow) {
    const found = {};
    flow.places.set(found, { line: flow.number, keys: {} });
    flow.at += 1;
    for (skip(flow); flow.text[flow.at] !== "}"; skip(flow)) {
      const key = /^[^:,[\]{}]*/.exec(flow.text.slice(flow.at))[0];
      flow.at += key.length;
      if (flow.text[flow.at] !== ":" || key.trim() === "") throw new Refused(flow.number, "has a group in { } that is not closed, or lacks a colon.");
      flow.at += 1;
      add(found, key.trim(), flow.number);
      found[key.trim()] = flowValue(flow);
      between(flow, "}");
    }
    flow.at += 1;
    return found;
  }

  function flowList(flow) {
    const found = [];
    flow.places.set(found, []);
    flow.at += 1;
    for (skip(flow); flow.text[flow.at] !== "]"; skip(flow)) {
      flow.places.get(found).push(flow.number);
      found.push(flowValue(flow));
      between(flow, "]");
    }
    flow.at += 1;
    return found;
  }

  function between(flow, end) {
    skip(flow);
    if (flow.text[flow.at] === ",") flow.at += 1;
    else if (flow.text[flow.at] !== end) throw new Refused(flow.number, "has brackets that are not closed, or lacks a comma.");
  }

  function flowScalar(flow) {
    const rest = flow.text.slice(flow.at);
    const quoted = /^"(?:[^"\\]|\\.)*"|^'(?:[^']|'')*'/.exec(rest);
    const found = quoted ? quoted[0] : /^(?:[^,[\]{}:]|:(?! ))*/.exec(rest)[0];
    if (found.trim() === "") throw new Refused(flow.number, "has no value where one should be.");
    flow.at += found.length;
    return scalar(found.trim(), flow.number);
  }

  function scalar(text, number) {
    if (/^["']/.test(text)) {
      const double = /^"((?:[^"\\]|\\.)*)"$/.exec(text), simple = /^'((?:[^']|'')*)'$/.exec(text);
      if (simple) return simple[1].replaceAll("''", "'");
      if (!double) throw new Refused(number, "has words after a closing quote.");
      return double[1].replace(/\\(.)/g, (_, char) => {
        if (!'"\\/'.includes(char)) throw new Refused(number, "has a backslash that is not read here; use single quotes.");
        return char;
      });
    }
    if (/^[&*!|>%@`]/.test(text)) throw new Refused(number, "uses a sign of YAML that riders do not need; put the value in quotes.");
    if (text.includes(": ")) throw new Refused(number, "has a colon within a value; put the value in quotes.");
    return text;
  }

  // Plain data as a rider file. Every text that YAML could read another way is put in quotes.
  function writeRider(data) {
    const out = [];
    for (const [key, value] of Object.entries(data)) {
      if (Array.isArray(value)) {
        if (value.length > 0) out.push(key + ":", ...value.map((each) => "  - " + inline(each)));
      } else out.push(key + ": " + inline(value));
    }
    return out.join("\n") + "\n";
  }

  function inline(value) {
    if (Array.isArray(value)) return "[" + value.map(inline).join(", ") + "]";
    if (value !== null && typeof value === "object") return "{" + Object.entries(value).map(([key, each]) => key + ": " + inline(each)).join(", ") + "}";
    const text = String(value);
    return /^[A-Za-z0-9][A-Za-z0-9 ./()-]*$/.test(text) && text === text.trim() ? text : '"' + text.replaceAll("\\", "\\\\").replaceAll('"', '\\"') + '"';
  }

  Object.assign(fit, { Refused, readRider, writeRider });
})((window.housefit = window.housefit || {}));
