// Keeps a drive on the phone until the service has it. Without this script the form is sent as any other.
(() => {
  const forms = [...document.querySelectorAll('form.log')];
  const words = document.getElementById('words').dataset;
  const page = location.pathname.replace(/\/drives$/, '');
  const careful = document.getElementById('careful');
  try {
    if (localStorage.getItem('careful') === page) careful.open = false;
    localStorage.setItem('careful', page);
  } catch (nothingKept) { /* then they stay open */ }
  if ('serviceWorker' in navigator) {
    navigator.serviceWorker.register('/d/worker.js').then(() => navigator.serviceWorker.ready).then(() =>
      caches.open('drives-1').then(shelf => shelf.addAll(
        [page, ...document.querySelectorAll('link[rel=stylesheet],script[src]')].map(at => at.href || at.src || at))))
      .catch(() => {});
  }
  if (!forms.length || !window.indexedDB) return;

  const opened = new Promise((done, fail) => {
    const ask = indexedDB.open('stayfixed-drives', 1);
    ask.onupgradeneeded = () => ask.result.createObjectStore('drives', {keyPath: 'key'});
    ask.onsuccess = () => done(ask.result);
    ask.onerror = () => fail(ask.error);
  });
  const store = (mode, use) => opened.then(db => new Promise((done, fail) => {
    const work = db.transaction('drives', mode);
    const ask = use(work.objectStore('drives'));
    work.oncomplete = () => done(ask.result);
    work.onerror = work.onabort = () => fail(work.error);
  }));
  const keep = drive => store('readwrite', s => s.put(drive));
  const drop = key => store('readwrite', s => s.delete(key));
  const mine = () => store('readonly', s => s.getAll()).then(all =>
    all.filter(d => d.page === page).sort((a, b) => a.savedAt < b.savedAt ? -1 : 1));
  const newKey = () => Array.from(crypto.getRandomValues(new Uint8Array(16)), b => b.toString(16).padStart(2, '0')).join('');
  // The page brings the words, with #1 and #2 where something of this script is put in.
  const said = (text, ...values) => words[text].replace(/#(\d)/g, (place, n) => values[n - 1]);
  // The answer stands at the button that was pressed.
  const say = (form, text) => {
    const place = form.querySelector('.answer');
    if (place.textContent !== text) place.textContent = text;
  };
  const formOf = drive => forms.find(form => form.id === drive.fields.card) || forms[0];

  // The drive was taken, and then reception went: the page that came is the one the phone kept.
  const logged = new URLSearchParams(location.search).get('logged');
  if (!logged) document.querySelectorAll('.answer').forEach(place => place.replaceChildren());
  const here = new URLSearchParams(location.search).get('drive');
  const answered = forms.find(form => {
    const place = form.querySelector('.answer');
    return place.textContent.trim() && (place.dataset.drive || null) === here;
  });
  const old = logged && !answered ? formOf({fields: {card: logged}}) : undefined;

  const unsent = () => mine().then(all => all.filter(d => !d.refused));
  let waiting = [];
  const show = async () => {
    const drives = await mine();
    waiting = drives.filter(d => !d.refused);
    for (const form of forms) {
      const kept = waiting.filter(d => formOf(d) === form).length;
      if (kept) say(form, said(kept === 1 ? 'one' : 'many', kept));
      else if (form === old) say(form, said('old'));
      else if (form !== answered) say(form, '');
      form.querySelector('.kept').replaceChildren(...drives.filter(d => d.refused && formOf(d) === form).map(refused));
    }
  };
  const refused = d => {
    const item = document.createElement('li');
    const why = document.createElement('p');
    why.textContent = d.file ? said('refusedFile', d.refused, d.file.name) : said('refused', d.refused);
    const form = formOf(d);
    const back = button(said('back'), async () => { fill(form, d.fields); await drop(d.key); await show(); form.scrollIntoView(); });
    const away = button(said('away'), async () => { await drop(d.key); await show(); });
    item.append(why, back, away);
    return item;
  };
  const button = (words, act) => {
    const made = document.createElement('button');
    made.type = 'button'; made.className = 'btn btn-outline-secondary'; made.textContent = words;
    made.addEventListener('click', act);
    return made;
  };
  const fill = (form, fields) => {
    for (const [name, value] of Object.entries(fields)) {
      const field = form.elements[name];
      if (!field) continue;
      field.value = value;
      const folded = field.closest && field.closest('details');
      if (folded) folded.open = true;
    }
  };

  const isLog = file => /\.(csv|gz|zip)$/i.test(file.name);
  const sendLog = drive => {
    const parts = new FormData();
    parts.append('drive', new Blob([JSON.stringify(drive.fields)], {type: 'application/json'}));
    parts.append('file', drive.file, drive.file.name);
    return fetch(page + '/logs', {method: 'POST', body: parts});
  };

  // One window of the phone sends at a time; in a browser without locks the key of the drive keeps it single.
  const alone = work => navigator.locks ? navigator.locks.request('stayfixed-drives', work) : work();

  let sending = false;
  let later;
  const send = async () => {
    if (sending) return;
    sending = true;
    clearTimeout(later);
    let before = waiting, sent;
    try {
      const now = await unsent();
      if (now.length > before.length) before = now;
      await alone(async () => {
        for (const drive of await unsent()) {
          const answer = await (drive.file ? sendLog(drive) : fetch(page + '/drives', {
            method: 'POST', body: JSON.stringify(drive.fields),
            headers: {'Content-Type': 'application/json', 'Idempotency-Key': drive.key}}));
          if (answer.ok) {
            drive.id = (await answer.json().catch(() => ({}))).driveId;
            await drop(drive.key);
            sent = drive;
            continue;
          }
          const problem = await answer.json().catch(() => ({}));
          if (answer.status === 429 || answer.status >= 500 || /in-use$/.test(problem.type || '')) throw answer.status;
          drive.refused = problem.errors ? problem.errors.map(e => e.message).join('. ') : problem.detail || said('ask');
          await keep(drive);
        }
      });
    } catch (noReception) {
      later = setTimeout(send, 30000);
    } finally {
      sending = false;
    }
    await show();
    // Another window of this page may have sent it.
    const gone = sent || (before.length > waiting.length && !document.querySelector('.kept li') ? before[0] : undefined);
    if (gone) {
      const card = formOf(gone).id;
      location.replace(page + '?logged=' + card + (gone.id ? '&drive=' + gone.id : '') + '#' + card + '-answer');
    }
  };

  const log = async form => {
    const fields = {};
    for (const [name, value] of new FormData(form)) if (typeof value === 'string' && value.trim()) fields[name] = value;
    const file = form.elements.file && form.elements.file.files[0];
    const log = file && isLog(file) ? file : undefined;
    if (file && !log) fields.record = await file.text();
    if (form.elements.record && !log && !fields.record && !(fields.start && fields.minutes)) {
      say(form, said('wantedReading'));
      form.elements.record.focus();
      return;
    }
    if (form.elements.minutes && !form.elements.record && !(fields.minutes === 'other' ? fields.otherMinutes : fields.minutes || fields.otherMinutes)) {
      say(form, said('wantedMinutes'));
      form.querySelector(fields.minutes === 'other' ? '[name=otherMinutes]' : '[name=minutes]').focus();
      return;
    }
    const savedAt = new Date().toISOString();
    fields.zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
    fields.savedAt = savedAt;
    try {
      await keep({key: newKey(), page, fields, savedAt, ...(log && {file: log})});
    } catch (noRoom) {
      form.submit();
      return;
    }
    form.reset();
    say(form, said('sending'));
    await send();
  };
  forms.forEach(form => form.addEventListener('submit', event => { event.preventDefault(); log(form); }));
  addEventListener('online', send);
  document.addEventListener('visibilitychange', () => { if (!document.hidden) send(); });
  send();
})();
