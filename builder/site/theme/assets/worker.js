// A page opened from a folder may not start a worker. There the search runs in an empty frame of the same page instead.
if (location.protocol === "file:") {
  window.Worker = class extends EventTarget {
    constructor(address) {
      super();
      this.waiting = [];
      this.frame = document.createElement("iframe");
      this.frame.hidden = true;
      this.frame.title = "Search";
      document.body.append(this.frame);
      const inside = this.frame.contentWindow;
      inside.postMessage = (data) => this.dispatchEvent(new MessageEvent("message", { data }));
      const script = inside.document.createElement("script");
      script.src = String(address);
      script.onload = () => this.start(inside);
      inside.document.head.append(script);
    }
    start(inside) {
      this.inside = inside;
      this.waiting.forEach((data) => this.postMessage(data));
    }
    postMessage(data) {
      if (this.inside) this.inside.dispatchEvent(new this.inside.MessageEvent("message", { data }));
      else this.waiting.push(data);
    }
  };
}
// A value and its unit belong together: 400A and 400 A are asked as "400 A", or every word that begins with an a would be found.
// And a name asked for in full comes first: R4-3 before R4-1 and every 3.
(function () {
  const VALUE = /(\d[\d.,]*)\s*(A|V|W|kW|kVA|kg|t|m|mm|cm|ft|in|lb|Hz|kHz|MHz|dB|kPa|kN)(?![A-Za-z0-9])/g;
  const QUERY = 2;
  const RESULT = 3;
  let wanted = "";
  // The search would take a hyphen for "without", and one at the end, as someone types R4-3, for a mistake.
  const JOINED = /[\p{L}\p{N}]+(?:-[\p{L}\p{N}]+)+/gu;
  function together(words) {
    if (words.includes('"')) return words;
    const joined = words.replace(JOINED, (name) => '"' + name.replace(/-/g, " ") + '"');
    return joined.replace(/-/g, " ").replace(VALUE, (value, number, unit, at) => (quoted(joined, at) ? value : '"' + number + " " + unit + '"'));
  }
  function quoted(words, at) {
    return (words.slice(0, at).match(/"/g) || []).length % 2 === 1;
  }
  function bare(words) {
    return words.replace(/<[^>]*>/g, "").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "");
  }
  function named(entry) {
    return wanted !== "" && bare(entry.title) === wanted;
  }
  // Each group is a page and its lines; the page stays at the head of its own group.
  function firstByName(groups) {
    groups.forEach((group) => {
      const best = Math.max(...group.map((entry) => entry.score));
      group.slice(1).filter(named).forEach((entry) => { entry.score = best + 1; });
      group.splice(1, group.length, ...group.slice(1).sort((a, b) => b.score - a.score));
    });
    return groups.filter((group) => group.some(named)).concat(groups.filter((group) => !group.some(named)));
  }
  function inOrder(event) {
    const message = event.data;
    if (!message || message.type !== RESULT || !message.data || !Array.isArray(message.data.items)) return event;
    const data = { ...message.data, items: firstByName(message.data.items) };
    return new MessageEvent("message", { data: { ...message, data } });
  }
  window.Worker = class extends window.Worker {
    postMessage(message) {
      const asked = message && message.type === QUERY && typeof message.data === "string";
      if (asked) wanted = bare(message.data);
      super.postMessage(asked ? { type: QUERY, data: together(message.data) } : message);
    }
    addEventListener(type, listener, ...rest) {
      const heard = type === "message" && typeof listener === "function" ? (event) => listener.call(this, inOrder(event)) : listener;
      super.addEventListener(type, heard, ...rest);
    }
  };
})();
