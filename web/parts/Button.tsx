import type { ReactNode } from 'react';
import { type ButtonProps, Button as Pressable } from 'react-aria-components';
import { Link } from 'wouter';

export type ButtonLook = 'plain' | 'primary' | 'quiet' | 'danger' | 'danger primary' | 'danger quiet';

export interface ButtonLooks extends Omit<ButtonProps, 'className' | 'style' | 'children'> {
  readonly look?: ButtonLook;
  /** What it started is under way: a second press does nothing, and the focus stays where it is. */
  readonly isPending?: boolean;
  readonly children: ReactNode;
}

export function Button({ look = 'plain', isPending = false, ...rest }: ButtonLooks) {
  const { onPress: _, ...inert } = rest;
  return isPending ? (
    <Pressable {...inert} type="button" className={`button ${look} busy`} />
  ) : (
    <Pressable {...rest} className={`button ${look}`} />
  );
}

/** A place to go that looks like a button: still a link, so it opens in a new tab. */
export function LinkButton(at: {
  readonly to: string;
  readonly look?: ButtonLook;
  readonly children: ReactNode;
}) {
  return (
    <Link href={at.to} className={`button ${at.look ?? 'plain'}`}>
      {at.children}
    </Link>
  );
}
