// Puts the focus on the error summary, so that people who do not see it are told of it.
"use strict";
document.getElementById("summary")?.focus();

// Shows how much of a file has been sent. Without this script the form is sent all the same, and the browser shows what it shows.
for (const form of document.querySelectorAll("form:has([data-upload])")) {
  const box = form.querySelector("[data-upload]"), bar = box.querySelector("progress"), words = box.querySelector("[role=status]");
  const file = form.querySelector("input[type=file]"), buttons = form.querySelectorAll("button");
  // The page brings the words, with #1 and #2 where something of this script is put in.
  const said = (text, ...values) => box.dataset[text].replace(/#(\d)/g, (place, n) => values[n - 1]);
  const size = bytes => bytes < 1e6 ? Math.ceil(bytes / 1e3) + " kB" : (bytes / 1e6).toFixed(1) + " MB";
  const wait = sending => { for (const b of buttons) b.disabled = sending; };
  form.addEventListener("submit", e => {
    if (!file.files.length) return;
    e.preventDefault();
    const request = new XMLHttpRequest(), data = new FormData(form, e.submitter);
    wait(true);
    box.hidden = false;
    words.textContent = said("sending", file.files[0].name);
    request.upload.onprogress = p => { bar.value = p.loaded / p.total; bar.textContent = said("part", size(p.loaded), size(p.total)); };
    request.upload.onload = () => { bar.removeAttribute("value"); words.textContent = said("arrived", size(file.files[0].size)); };
    request.onerror = () => {
      wait(false);
      bar.value = 0;
      words.textContent = said("lost");
    };
    request.onload = () => {
      if (new URL(request.responseURL).pathname !== new URL(form.action).pathname) return location.assign(request.responseURL);
      document.open();
      document.write(request.responseText);
      document.close();
    };
    request.open("POST", form.action);
    request.send(data);
  });
}

// Reads what was typed so far, as the form's own button does, and shows what was found. Only empty fields are filled, and never the one
// that somebody is in. Without this script the button does it.
for (const form of document.querySelectorAll("form[data-read]")) {
  const [name, value] = form.dataset.read.split("=");
  let asked = 0;
  form.addEventListener("change", async e => {
    if (!e.target.closest("[data-reads]")) return;
    const mine = ++asked, typed = new URLSearchParams(new FormData(form));
    typed.set(name, value);
    const answer = await fetch(form.action, { method: "POST", body: typed }).catch(() => null);
    if (!answer?.ok || mine !== asked) return;
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    for (const part of form.querySelectorAll("[data-shown]")) part.replaceChildren(...page.getElementById(part.id).childNodes);
    for (const fold of form.querySelectorAll("[data-fold]")) {
      const found = page.getElementById(fold.id);
      fold.querySelector("summary").textContent = found.querySelector("summary").textContent;
      if (!fold.contains(document.activeElement)) fold.open = found.open;
    }
    const rows = form.querySelectorAll("[data-row]"), read = page.querySelectorAll("[data-row]");
    [...read].slice(rows.length).reduce((last, row) => (last.after(row), row), rows[rows.length - 1]);
    for (const field of form.querySelectorAll("input[type=text]")) {
      const found = page.getElementById(field.id);
      if (found && field.value === "" && field !== document.activeElement) field.value = found.value;
    }
  });
}

// Keys beside a reading put in what a meter shows instead of a number, or empty the field. Without this script it is typed.
for (const keys of document.querySelectorAll("[data-reading]")) {
  const field = document.getElementById(keys.dataset.reading);
  keys.hidden = false;
  for (const key of keys.querySelectorAll("button")) key.addEventListener("click", () => { field.value = key.value; field.focus(); });
}

// The driver's link into another program. A browser that cannot share, or does not let pages copy, shows no such button; the link
// itself stands above them.
for (const box of document.querySelectorAll("[data-share]")) {
  const url = box.dataset.share, [copy, share] = box.querySelectorAll("button");
  copy.hidden = !navigator.clipboard;
  share.hidden = !navigator.share;
  box.hidden = copy.hidden && share.hidden;
  copy.addEventListener("click", async () => {
    await navigator.clipboard.writeText(url);
    box.querySelector("[role=status]").textContent = box.dataset.copied;
  });
  share.addEventListener("click", () => navigator.share({ url }).catch(() => {}));
}
