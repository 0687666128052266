// The job lives in the browser, so pages are drawn there; each still gets a file of its own.
export const prerender = true;
export const ssr = false;
export const trailingSlash = 'always';
