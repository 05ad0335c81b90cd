import { IconButton } from '../../../kit/button.tsx';
import { useKeptState } from '../../../kit/use-kept-state.ts';

/**
 * Gives the board the whole room, or gives the lists beside it back. The style sheet hides them while the button is pressed:
 * nothing is taken down, so that everything comes back as it was.
 */
export function WideButton() {
  const [width, setWidth] = useKeptState<'wide' | 'beside'>('board:width', ['wide', 'beside'], 'beside');
  const isWide = width === 'wide';
  return (
    <IconButton
      label={isWide ? 'Show the lists beside' : 'Whole width'}
      icon={<WideIcon />}
      pressed={isWide}
      className={isWide ? 'board-wide' : undefined}
      onClick={() => setWidth(isWide ? 'beside' : 'wide')}
    />
  );
}

const WideIcon = () => (
  <svg
    className="icon"
    width="16"
    height="16"
    viewBox="0 0 16 16"
    fill="none"
    stroke="currentColor"
    strokeWidth="1.5"
    aria-hidden="true"
    focusable="false"
  >
    <path d="M1.8 3v10M14.2 3v10M4 8h8M6.2 5.8 4 8l2.2 2.2M9.8 5.8 12 8l-2.2 2.2" />
  </svg>
);
