import { departments } from './departments.ts';
import { goTo, usePlace } from './place.ts';

/** The departments down the side: only those that work. */
export function Rail() {
  const place = usePlace();
  return (
    <nav className="rail" aria-label="Departments" data-pane tabIndex={-1}>
      {departments.map(({ id, title, Icon }) => (
        <button
          key={id}
          type="button"
          className="rail-item"
          aria-current={id === place.department ? 'page' : undefined}
          onClick={() => goTo({ department: id })}
        >
          <Icon />
          <span className="lettering">{title}</span>
        </button>
      ))}
    </nav>
  );
}
