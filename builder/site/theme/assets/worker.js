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
(function () {
  const VALUE = /(\d[\d.,]*)\s*(A|V|W|kW|kVA|kg|t|m|mm|cm|ft|in|lb|Hz|kHz|MHz|dB|kPa|kN)(?![A-Za-z0-9])/g;
  const QUERY = 2;
  function together(words) {
    return words.includes('"') ? words : words.replace(VALUE, '"$1 $2"');
  }
  window.Worker = class extends window.Worker {
    postMessage(message) {
      const asked = message && message.type === QUERY && typeof message.data === "string";
      super.postMessage(asked ? { type: QUERY, data: together(message.data) } : message);
    }
  };
})();
