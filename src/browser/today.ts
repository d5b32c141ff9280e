/**
 * Works out today on the device, so that a page built weeks ago still says what is next. Without this script the page stands
 * as it was on the day of the plan. All it needs is written in the page as data attributes.
 */
const DAY_MS = 86_400_000;
const { zone, asOf = '', locale } = document.body.dataset;

const dayOf = (iso: string) => Date.parse(`${iso}T00:00:00Z`) / DAY_MS;
const each = (selector: string, act: (found: HTMLElement & SVGElement) => void) => {
  for (const found of document.querySelectorAll<HTMLElement & SVGElement>(selector)) act(found);
};

/** Today's date in the household's zone; the plan's own day where the device cannot tell. */
function today(): string {
  try {
    const parts = new Intl.DateTimeFormat('en', {
      timeZone: zone,
      calendar: 'gregory',
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
    }).formatToParts();
    const part = (type: string) => parts.find((p) => p.type === type)?.value ?? '';
    const iso = `${part('year')}-${part('month')}-${part('day')}`;
    return Number.isFinite(dayOf(iso)) ? iso : asOf;
  } catch {
    return asOf;
  }
}

const now = today();
const days = dayOf(now);
const relative = new Intl.RelativeTimeFormat(locale, { numeric: 'auto' });
const long = new Intl.DateTimeFormat(locale, {
  timeZone: 'UTC',
  calendar: 'gregory',
  weekday: 'long',
  day: 'numeric',
  month: 'long',
  year: 'numeric',
});

each('[data-today]', (found) => {
  found.textContent = long.format(days * DAY_MS);
  found.setAttribute('datetime', now);
});

each('[data-relative]', (found) => {
  found.textContent = relative.format(dayOf(found.dataset.relative ?? now) - days, 'day');
});

// Something that holds from one day until before another.
each('[data-show-from]', (found) => {
  const { showFrom = '', showUntil = '9999' } = found.dataset;
  found.hidden = !(showFrom <= now && now < showUntil);
});

// The list of what is next shows the first so many of the days to come, and the one that comes first stands out.
each('[data-next]', (list) => {
  const most = Number(list.dataset.next);
  let shown = 0;
  for (const item of list.querySelectorAll<HTMLElement>('[data-date]')) {
    const open = (item.dataset.until ?? item.dataset.date ?? '') >= now;
    item.hidden = !open || shown >= most;
    item.classList.toggle('is-first', open && shown === 0);
    if (open) shown += 1;
  }
  each('[data-next-empty]', (found) => {
    found.hidden = shown > 0;
  });
  each('[data-next-ended]', (found) => {
    found.hidden = shown === 0 || shown >= most || list.dataset.whole !== undefined;
  });
});

// Days of the last two weeks.
each('[data-passed]', (box) => {
  let shown = 0;
  for (const item of box.querySelectorAll<HTMLElement>('[data-date]')) {
    const passed = item.dataset.until ?? item.dataset.date ?? '';
    item.hidden = !(passed < now && dayOf(passed) >= days - 14);
    if (!item.hidden) shown += 1;
  }
  box.hidden = shown === 0;
});

// Sessions of days that have passed move out of the way.
each('[data-earlier]', (box) => {
  const list = box.querySelector('ol');
  each('[data-session]', (item) => {
    if (list && (item.dataset.session ?? '') < now) list.append(item);
  });
  box.hidden = !list?.firstElementChild;
  each('[data-month]', (month) => {
    month.hidden = !month.querySelector('[data-session]');
  });
});

each('[data-past-date]', (found) => {
  found.classList.toggle('is-past', (found.dataset.pastDate ?? '') < now);
});

// Of a list by day, what is past stands after what is to come.
each('[data-past-last]', (list) => {
  list.append(...list.querySelectorAll(':scope > .is-past'));
});

// The hand of the year ring.
each('[data-hand]', (hand) => {
  const year = now.slice(0, 4);
  const first = dayOf(`${year}-01-01`);
  const length = dayOf(`${String(Number(year) + 1).padStart(4, '0')}-01-01`) - first;
  hand.setAttribute('transform', `rotate(${(((days - first) / length) * 360).toFixed(1)})`);
});

// The line at today in pictures along the time.
each('[data-now]', (line) => {
  const { from = now, to = now, x0, x1 } = line.dataset;
  const share = (days - dayOf(from)) / Math.max(1, dayOf(to) - dayOf(from));
  line.classList.toggle('f-away', !(share >= 0 && share <= 1));
  line.setAttribute('transform', `translate(${(Number(x0) + (Number(x1) - Number(x0)) * share).toFixed(1)} 0)`);
});
