/* What is open once some procedures are done: read from the ledger's own table, shown in the words of its own rows. */
(function () {
  "use strict";
  var home = document.querySelector("[data-wm-ledger]");
  if (!home) return;
  var table = JSON.parse(home.dataset.wmLedger);
  var boxes = Array.prototype.slice.call(home.querySelectorAll("[name=done]"));
  var list = home.querySelector(".wm-open"), count = home.querySelector(".wm-count"), never = home.querySelector(".wm-never-now");

  /* What was ticked is kept on this device, under a name that no other book on this origin has. */
  function kept(value) {
    try {
      if (value === undefined) return JSON.parse(localStorage.getItem(home.dataset.keep + " " + location.pathname)) || {};
      localStorage.setItem(home.dataset.keep + " " + location.pathname, JSON.stringify(value));
    } catch (refused) { /* comfort only: a browser may refuse */ }
    return {};
  }

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
    kept({
      variant: home.querySelector("[name=variant]:checked").value,
      done: boxes.filter(function (one) { return one.checked; }).map(function (one) { return one.value; })
    });
  });
  var before = kept();
  boxes.forEach(function (one) { one.checked = (before.done || []).indexOf(one.value) >= 0; });
  home.querySelectorAll("[name=variant]").forEach(function (one) { if (one.value === before.variant) one.checked = true; });
  home.hidden = false;
  show();
})();
