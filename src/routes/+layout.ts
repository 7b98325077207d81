// The workbook lives in the browser: there is nothing to draw on a server.
export const ssr = false;
export const prerender = true;
// A folder with an index file for each sheet: any plain file host can serve that.
export const trailingSlash = 'always';
