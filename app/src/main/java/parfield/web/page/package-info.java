/**
 * How a page is drawn: templates, the frame about every screen, problems as pages, what a person
 * chose to see (unit of length, light or dark).
 */
package parfield.web.page;
