import type { ButtonHTMLAttributes, ReactNode } from 'react';
import { classNames } from './class-names.ts';
import { Tip } from './tip.tsx';

interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  /** `main`: the one act that is expected here; `stop`: it takes something away; `quiet`: without a frame. */
  readonly look?: 'plain' | 'main' | 'stop' | 'quiet';
  readonly pressed?: boolean | undefined;
}

export function Button({ look = 'plain', pressed, className, type = 'button', ...rest }: ButtonProps) {
  return (
    <button
      {...rest}
      type={type}
      aria-pressed={pressed}
      className={classNames('button', look !== 'plain' && look, className)}
    />
  );
}

interface IconButtonProps extends Omit<ButtonProps, 'children'> {
  /** Read aloud and shown as a tip. */
  readonly label: string;
  readonly icon: ReactNode;
  /** Key that does the same, shown in the tip. */
  readonly keys?: string;
}

export function IconButton({ label, icon, keys, className, ...rest }: IconButtonProps) {
  return (
    <Tip text={keys === undefined ? label : `${label}  (${keys})`} describes={false}>
      <Button look="quiet" {...rest} aria-label={label} className={classNames('icon', className)}>
        {icon}
      </Button>
    </Tip>
  );
}
