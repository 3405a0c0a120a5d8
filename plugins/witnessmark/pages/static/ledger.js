/* What is open once some procedures are done: read from the ledger's own table, shown in the words of its own rows. */
(function () {
  "use strict";
  var home = document.querySelector("[data-wm-ledger]");
  if (!home) return;
  var table = JSON.parse(home.dataset.wmLedger);
  var boxes = Array.prototype.slice.call(home.querySelectorAll("[name=done]"));
  var list = home.querySelector(".wm-open"), count = home.querySelector(".wm-count"), never = home.querySelector(".wm-never-now");

  function box(id) {
    return boxes.find(function (one) { return one.value === id; });
  }

  function tickBefore(id) {
    table.after[id].forEach(function (other) {
      if (!box(other).checked) {
        box(other).checked = true;
        tickBefore(other);
      }
    });
  }

  function untickBehind(id) {
    boxes.forEach(function (one) {
      if (one.checked && table.after[one.value].indexOf(id) >= 0) {
        one.checked = false;
        untickBehind(one.value);
      }
    });
  }

  function show() {
    var variant = home.querySelector("[name=variant]:checked").value, total = 0, forbidden = [];
    var done = {};
    boxes.forEach(function (one) {
      var mine = table.on[one.value].indexOf(variant) >= 0;
      one.parentNode.hidden = !mine;
      done[one.value] = one.checked && mine;
    });
    list.textContent = "";
    table.ends.forEach(function (end) {
      if (!done[end.left] || !end.open[variant]) return;
      var places = end.open[variant].filter(function (row) {
        return !row.slice(1).some(function (id) { return done[id]; });
      }).map(function (row) { return row[0]; });
      if (!places.length) return;
      total += places.length;
      forbidden = forbidden.concat(end.never.filter(function (act) { return forbidden.indexOf(act) < 0; }));
      var item = document.createElement("li"), link = document.createElement("a");
      link.href = "#" + end.id;
      link.textContent = document.getElementById(end.id).querySelector("h3").textContent;
      item.dataset.ticks = String(places.length);
      item.appendChild(link);
      if (places[0]) item.appendChild(document.createTextNode(" (" + places.join(", ") + ")"));
      list.appendChild(item);
    });
    count.textContent = total ? home.dataset.textCount.replace("{}", String(total)) : home.dataset.textNone;
    never.textContent = forbidden.length ? home.dataset.textNever + ": " + forbidden.join(", ") + "." : "";
  }

  home.addEventListener("change", function (event) {
    if (event.target.name === "done") (event.target.checked ? tickBefore : untickBehind)(event.target.value);
    show();
  });
  home.hidden = false;
  show();
})();
