import { redirect } from '@sveltejs/kit';
import { resolve } from '$app/paths';

/** The argument begins with what is done today. */
export function load(): never {
  redirect(307, resolve('/case-mix/'));
}
