/** What every page's script does: the other units without a reload, and the marks of charts told one by one. */
const KEY = 'keeprow-units';

function stored(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

function remember(value: string): void {
  try {
    localStorage.setItem(KEY, value);
  } catch {
    // Without storage the choice lasts for the page.
  }
}

function openUnits(): void {
  const button = document.querySelector<HTMLButtonElement>('#unit-switch');
  const quantities = document.querySelectorAll<HTMLElement>('.unit');
  if (!button || quantities.length === 0) return;
  let isOther = false;
  const swap = (): void => {
    isOther = !isOther;
    for (const own of quantities) {
      const { other } = own.dataset;
      own.dataset['other'] = own.textContent;
      own.textContent = other ?? '';
    }
    for (const drawing of document.querySelectorAll<HTMLElement>('.wide-other, .narrow-other')) {
      const here = drawing.parentElement!.querySelector<HTMLElement>(`.${drawing.className.replace('-other', '')}`)!;
      drawing.hidden = !isOther;
      here.hidden = isOther;
    }
    button.textContent = (isOther ? button.dataset['other'] : button.dataset['here']) ?? '';
  };
  button.textContent = button.dataset['here'] ?? '';
  button.hidden = false;
  if (stored() === 'other') swap();
  button.addEventListener('click', () => {
    swap();
    remember(isOther ? 'other' : 'here');
  });
}

/** Marks are told at the foot of the page, which screen readers read out, and beside the pointer. */
function openMarks(): void {
  const status = document.querySelector<HTMLElement>('#mark');
  if (!status) return;
  const tip = document.createElement('div');
  tip.id = 'tip';
  tip.hidden = true;
  document.body.append(tip);
  const show = (mark: Element): void => {
    const text = mark.getAttribute('aria-label') ?? '';
    const box = mark.getBoundingClientRect();
    tip.textContent = text;
    tip.hidden = false;
    tip.style.left = `${Math.max(8, Math.min(box.left + scrollX, innerWidth - tip.offsetWidth - 8))}px`;
    tip.style.top = `${box.bottom + scrollY + 6}px`;
  };
  for (const svg of document.querySelectorAll<SVGSVGElement>('figure > div > svg')) {
    const marks = [...svg.querySelectorAll<SVGElement>('path[aria-label]')].filter(
      (mark) => mark.getAttribute('role') === 'graphics-symbol',
    );
    if (marks.length === 0) continue;
    let at = -1;
    svg.setAttribute('tabindex', '0');
    svg.addEventListener('focus', () => (status.textContent = status.dataset['help'] ?? ''));
    svg.addEventListener('blur', () => (tip.hidden = true));
    svg.addEventListener('keydown', (event) => {
      const step =
        event.key === 'ArrowDown' || event.key === 'ArrowRight'
          ? 1
          : event.key === 'ArrowUp' || event.key === 'ArrowLeft'
            ? -1
            : 0;
      if (event.key === 'Escape') tip.hidden = true;
      if (step === 0) return;
      event.preventDefault();
      at = (at + step + marks.length) % marks.length;
      show(marks[at]!);
      status.textContent = marks[at]!.getAttribute('aria-label');
    });
    for (const mark of marks) {
      mark.addEventListener('pointerenter', () => show(mark));
      mark.addEventListener('pointerleave', () => (tip.hidden = true));
    }
  }
}

/** Leaves the varieties whose names hold what was typed. */
function openFilter(): void {
  const place = document.querySelector<HTMLElement>('#filter');
  if (!place) return;
  const [label, input, told] = [
    document.createElement('label'),
    document.createElement('input'),
    document.createElement('span'),
  ];
  input.id = 'filter-name';
  label.htmlFor = input.id;
  label.textContent = place.dataset['label'] ?? '';
  told.setAttribute('role', 'status');
  place.append(label, input, told);
  input.addEventListener('input', () => {
    const wanted = input.value.trim().toLowerCase();
    let left = 0;
    for (const section of document.querySelectorAll<HTMLElement>('main section')) {
      let here = 0;
      for (const item of section.querySelectorAll<HTMLElement>('[data-name]')) {
        item.hidden = !(item.dataset['name'] ?? '').includes(wanted);
        if (!item.hidden) here++;
      }
      section.hidden = here === 0;
      left += here;
    }
    told.textContent = wanted === '' ? '' : left === 0 ? (place.dataset['none'] ?? '') : String(left);
  });
}

openUnits();
openMarks();
openFilter();
